import { postWords } from '../../words/post.ts';
import { useView } from '../view.ts';
import type { PagePicture } from './drawn-sheet.ts';
import { posting, usePostingState } from './posting.ts';

/** The page of a sheet that is shown, 0 first, and how to turn to another, which a screen reader then hears. */
export function usePageTurn(pages: readonly PagePicture[]): {
  readonly page: number;
  turn(by: 1 | -1): void;
  show(page: number): void;
  says(picture: PagePicture): string;
} {
  const view = useView();
  const count = pages.length;
  const page = Math.max(
    0,
    Math.min(
      usePostingState((state) => state.page),
      count - 1,
    ),
  );
  const saysOf = (at: number, picture: PagePicture) =>
    count === 1 ? picture.about : postWords.pageReads(at + 1, count, picture.about);
  const show = (to: number) => {
    const at = Math.max(0, Math.min(count - 1, to));
    const picture = pages[at];
    if (at === page || picture === undefined) return;
    posting.showPage(at);
    view.tell(saysOf(at, picture));
  };
  return { page, show, turn: (by) => show(page + by), says: (picture) => saysOf(page, picture) };
}
