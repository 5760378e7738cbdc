/**
 * jsx/ makes the elements of all components: React's own, but that a length never breaks across lines on the screen. The
 * core prints lengths with plain spaces, for files, paper and the command line, and this is the one place that all texts of
 * the app pass. The compiler and Vite are told of it by `jsxImportSource`.
 */
import { Fragment as ReactFragment, jsx as reactJsx, jsxs as reactJsxs } from 'react/jsx-runtime';
import { propsWithoutBreaks } from './no-break.ts';

export type { JSX } from 'react/jsx-runtime';

export const Fragment = ReactFragment;
export const jsx: typeof reactJsx = (type, props, key) => reactJsx(type, propsWithoutBreaks(type, props), key);
export const jsxs: typeof reactJsxs = (type, props, key) => reactJsxs(type, propsWithoutBreaks(type, props), key);
