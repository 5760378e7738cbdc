import { useStripFold } from './strip-fold.ts';

/** As large as the strip, while it is fetched. */
export function StripPlace() {
  const { isFolded } = useStripFold();
  return <section className={isFolded ? 'strip is-folded' : 'strip'} aria-hidden="true" />;
}
