import { BadInput } from './io.ts';

/** The address of the app as given, in the form in which a browser writes it. Throws BadInput where it is none. */
export function linkBaseFrom(flag: string, text: string): string {
  let base: URL;
  try {
    base = new URL(text);
  } catch {
    throw new BadInput(`${flag}: "${text}" is not an address. Write one such as https://trail.example/.`);
  }
  if (base.protocol !== 'https:' && base.protocol !== 'http:') {
    throw new BadInput(`${flag}: "${text}" begins with ${base.protocol}; a page begins with https: or http:.`);
  }
  base.hash = '';
  return base.href;
}
