import type { Camera } from '../camera.ts';
import type { Theme } from './inks.ts';

/** What every painter needs to know of the picture: where the ground lies on the screen, and its colours. */
export interface DrawContext {
  readonly camera: Camera;
  readonly theme: Theme;
}
