import { type RefObject, useEffect, useRef, useState } from 'react';
import { type PagePicture, pictureFile } from './drawn-sheet.ts';
import { usePageFaces } from './page-faces.ts';
import { type FrameSize, PIXELS_A_MM } from './page-zoom.ts';

/** A picture of a page that the browser can show. */
interface ReadyPicture {
  readonly url: string;
  readonly of: PagePicture;
  readonly alt: string;
}

/**
 * The page that is shown: the last one stays until the browser has read the next one, so that nothing flashes. `factorOf` gives
 * the zoom for its size in millimetres. The picture is of lines, and as sharp at every zoom.
 */
export function PageSheet({
  picture,
  alt,
  factorOf,
  place,
}: {
  readonly picture: PagePicture;
  readonly alt: string;
  factorOf(page: FrameSize): number;
  /** The paper on the screen. */
  readonly place: RefObject<HTMLDivElement | null>;
}) {
  const { shown, coming, promote } = useReadyPicture(picture, alt);
  const { width, height } = shown?.of ?? picture;
  const scale = PIXELS_A_MM * factorOf({ width, height });
  return (
    <div ref={place} className="page-sheet" style={{ width: width * scale, height: height * scale }}>
      {[shown, coming].map(
        (each) =>
          each !== null && (
            <img
              key={each.url}
              className={each === shown ? 'page' : 'page is-coming'}
              src={each.url}
              alt={each === shown ? each.alt : ''}
              draggable={false}
              onLoad={() => promote(each)}
              onError={() => promote(each)}
            />
          ),
      )}
    </div>
  );
}

function useReadyPicture(picture: PagePicture, alt: string) {
  const faces = usePageFaces();
  const [shown, setShown] = useState<ReadyPicture | null>(null);
  const [coming, setComing] = useState<ReadyPicture | null>(null);
  const kept = useRef('');
  useEffect(() => {
    const url = URL.createObjectURL(pictureFile(picture, faces));
    setComing({ url, of: picture, alt });
    return () => {
      if (kept.current !== url) URL.revokeObjectURL(url);
    };
  }, [picture, alt, faces]);
  useEffect(() => () => URL.revokeObjectURL(kept.current), []);
  const promote = (ready: ReadyPicture) => {
    if (ready !== coming) return;
    URL.revokeObjectURL(kept.current);
    kept.current = ready.url;
    setShown(ready);
    setComing(null);
  };
  return { shown, coming, promote };
}
