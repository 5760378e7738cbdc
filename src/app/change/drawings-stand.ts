import type { Arena } from '../../core/course/course.ts';
import { fitCamera, type ScreenSize } from '../arena/camera.ts';

/** Whether several drawings of an arena are larger beside each other or one under the other. */
export function drawingsStand(arena: Arena, { width, height }: ScreenSize, count: number): 'beside' | 'below' {
  const beside = fitCamera(arena, { width: width / count, height });
  const below = fitCamera(arena, { width, height: height / count });
  return below.scale > beside.scale ? 'below' : 'beside';
}
