/** As jsx-runtime.ts, for `npm run dev`. */
import { Fragment as ReactFragment, jsxDEV as reactJsxDev } from 'react/jsx-dev-runtime';
import { propsWithoutBreaks } from './no-break.ts';

export type { JSX } from 'react/jsx-runtime';

export const Fragment = ReactFragment;
export const jsxDEV: typeof reactJsxDev = (type, props, ...rest) =>
  reactJsxDev(type, propsWithoutBreaks(type, props), ...rest);
