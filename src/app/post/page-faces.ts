import { useEffect, useState } from 'react';
import { faceRules } from '../../sheets/faces.ts';
import { pictureFaces } from './export-resources.ts';

let fetched: Promise<string> | undefined;

/** The faces for pictures of pages; empty until they have come, and where they cannot be fetched. */
export function usePageFaces(): string {
  const [faces, setFaces] = useState('');
  useEffect(() => {
    fetched ??= pictureFaces().then(faceRules);
    fetched.then(setFaces, () => {
      // The pictures keep the letters of the system, fitted to the same width; the next picture asks again.
      fetched = undefined;
    });
  }, []);
  return faces;
}
