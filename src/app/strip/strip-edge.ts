/** Space before the start and after the end of the track, pixels. */
export const STRIP_EDGE = 28;
