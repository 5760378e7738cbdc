/** Room before the start and after the end of the ribbon, pixels. */
export const STRIP_EDGE = 28;
