/** Names by which a computer calls itself: nobody else's phone can open a page there. */
const OWN_NAMES = /^(localhost|.+\.localhost|127(\.\d+){3}|\[::1\]|0\.0\.0\.0)$/;

/** What is looked at of the address of the page. */
type Address = Pick<Location, 'protocol' | 'hostname' | 'origin' | 'pathname'>;

/** The address that links to a course begin with; undefined where only this computer could open them, or there is no page. */
export function linkBaseOf(address: Address | undefined): string | undefined {
  if (address === undefined) return undefined;
  const { protocol, hostname, origin, pathname } = address;
  const isServed = protocol === 'https:' || protocol === 'http:';
  return isServed && !OWN_NAMES.test(hostname) ? origin + pathname : undefined;
}
