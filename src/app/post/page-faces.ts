import { useEffect, useState } from 'react';
import bold from '../../../assets/fonts/inter-bold.woff2?url';
import regular from '../../../assets/fonts/inter-regular.woff2?url';

const FILES = [
  [400, regular],
  [700, bold],
] as const;

let fetched: Promise<string> | undefined;

/** The letters of the sheets as @font-face rules that hold the font files: a picture may not fetch any. */
async function fetchFaces(): Promise<string> {
  const rules = FILES.map(async ([weight, url]) => {
    const answer = await fetch(url);
    if (!answer.ok) throw new Error(`page-faces: ${url} did not load (${answer.status})`);
    const file = new Uint8Array(await answer.arrayBuffer());
    const text = btoa(Array.from(file, (byte) => String.fromCharCode(byte)).join(''));
    return `@font-face{font-family:Inter;font-weight:${weight};src:url(data:font/woff2;base64,${text})}`;
  });
  return (await Promise.all(rules)).join('');
}

/** The faces for pictures of pages; empty until they have come, and where they cannot be fetched. */
export function usePageFaces(): string {
  const [faces, setFaces] = useState('');
  useEffect(() => {
    fetched ??= fetchFaces();
    fetched.then(setFaces, () => {
      // The pictures keep the letters of the system, fitted to the same width; the next picture asks again.
      fetched = undefined;
    });
  }, []);
  return faces;
}
