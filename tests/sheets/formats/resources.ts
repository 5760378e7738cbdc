import { exportResources } from '../../../src/cli/export-resources.ts';
import type { ExportWatch } from '../../../src/sheets/formats/format.ts';
import type { PageOptions } from '../../../src/sheets/sheet.ts';

/** What writers need, as the command line reads it. */
export const RESOURCES = exportResources();

/** Nobody watches. */
export const UNWATCHED: ExportWatch = { step: () => {} };

export const LETTER: PageOptions = { paper: 'letter', orientation: 'fit' };
