import type { Paper } from '../../sheets/sheet.ts';
import { postWords } from '../../words/post.ts';

export const PAPERS: Readonly<Record<Paper, string>> = { letter: postWords.letter, a4: 'A4' };
