import { useMemo } from 'react';
import { useDeskState } from '../../desk-context.tsx';
import { useViewState } from '../../view.ts';
import { arenaFurniture, type Furniture } from '../camera.ts';

/** Where the buttons and the legend stand in the picture as it is now. */
export function useFurniture(): Furniture {
  const arena = useDeskState((state) => state.course.arena);
  const size = useViewState((state) => state.size);
  return useMemo(() => arenaFurniture(arena, size), [arena, size]);
}
