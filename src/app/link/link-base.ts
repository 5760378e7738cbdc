/** Names by which a computer calls itself: nobody else's phone can open a page there. */
const OWN_NAMES = /^(localhost|.+\.localhost|127(\.\d+){3}|\[::1\]|0\.0\.0\.0)$/;

/** The address that links to a course begin with; undefined where only this computer could open them. */
export function linkBaseOf({ protocol, hostname, origin, pathname }: Location): string | undefined {
  const isServed = protocol === 'https:' || protocol === 'http:';
  return isServed && !OWN_NAMES.test(hostname) ? origin + pathname : undefined;
}
