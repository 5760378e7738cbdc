import type { Pages } from '../../sheets/sheet.ts';
import { svg } from '../../sheets/svg.ts';
import { usePageFaces } from './page-faces.ts';

/** The pages of a sheet as they will be printed. */
export function PagePictures({ drawn }: { readonly drawn: Pages }) {
  const faces = usePageFaces();
  return (
    <>
      {drawn.substitutions.map((substitution) => (
        <p key={substitution} className="caution">
          {substitution}
        </p>
      ))}
      {drawn.pages.map((page, index) => (
        <img
          // biome-ignore lint/suspicious/noArrayIndexKey: pages are known by their place.
          key={index}
          className={page.width > page.height ? 'page lying' : 'page'}
          style={{ aspectRatio: `${page.width} / ${page.height}` }}
          src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg(page, faces))}`}
          alt={page.about}
        />
      ))}
    </>
  );
}
