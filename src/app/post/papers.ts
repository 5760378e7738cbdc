import type { Paper } from '../../sheets/sheet.ts';

export const PAPERS: Readonly<Record<Paper, string>> = { letter: 'Letter', a4: 'A4' };
