import { type ToggleEvent, useRef, useState } from 'react';
import type { ExportFormat } from '../../sheets/formats/format.ts';
import { EXPORT_FORMATS } from '../../sheets/formats/formats.ts';
import { SHEETS, sheetById } from '../../sheets/sheets.ts';
import { linkWords } from '../../words/link.ts';
import { postWords } from '../../words/post.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import type { PagePicture } from './drawn-sheet.ts';
import type { ExportOrder, OrderedSheet } from './export-order.ts';
import { canShare, saveOrder, shareOrder } from './export-verbs.ts';
import { useExportState } from './exporter.ts';
import { pageOptionsOf, posting, usePostingState } from './posting.ts';
import { printPages } from './print-pages.ts';

/** For a picture of dots: a message, a screen, a printer, a printing house. */
const RESOLUTIONS = [96, 150, 300, 600] as const;
const OF_SHEETS = EXPORT_FORMATS.filter(({ about, binds }) => about === 'sheets' && binds === undefined);
const FOLDERS = EXPORT_FORMATS.filter(({ binds }) => binds !== undefined);
const OF_COURSE = EXPORT_FORMATS.filter(({ about }) => about === 'course');
const HAS_DOTS = EXPORT_FORMATS.some(({ ending }) => ending === 'png');

/** Every kind of file, print and share. */
export function ExportMenu({
  id,
  pages,
  openLink,
}: {
  readonly id: string;
  readonly pages: readonly PagePicture[];
  openLink(): void;
}) {
  const desk = useDesk();
  const menu = useRef<HTMLDivElement>(null);
  const [shares] = useState(canShare);
  const sheet = usePostingState((state) => state.sheet);
  const dpi = usePostingState((state) => state.dpi);
  const hasDay = useDeskState((state) => state.course.day !== undefined);
  const isBusy = useExportState().kind === 'busy';
  const orderOf = (format: string, sheets: ExportOrder['sheets']): ExportOrder => ({
    course: desk.state().course,
    format,
    sheets,
    dpi,
  });
  const chosen = (verb: () => unknown) => () => {
    if (isBusy) return;
    menu.current?.hidePopover();
    void verb();
  };
  const shown = (): ExportOrder['sheets'] => [orderedSheet(sheet)];
  const item = (format: ExportFormat, sheets: () => ExportOrder['sheets']) => (
    <button
      key={format.id}
      type="button"
      aria-disabled={isBusy}
      onClick={chosen(() => saveOrder(orderOf(format.id, sheets())))}
    >
      {format.title} <kbd>.{format.ending}</kbd>
    </button>
  );
  return (
    <div id={id} ref={menu} popover="auto" className="menu export-menu" onToggle={placeAboveButton}>
      <h2>{sheetById(sheet).title}</h2>
      {OF_SHEETS.map((format) => item(format, shown))}
      {HAS_DOTS && (
        <div className="field export-dpi">
          <label htmlFor={`${id}-dpi`}>{postWords.dotsInAnInch}</label>
          <select id={`${id}-dpi`} value={String(dpi)} onChange={(event) => posting.setDpi(Number(event.target.value))}>
            {RESOLUTIONS.map((each) => (
              <option key={each} value={String(each)}>
                {each}
              </option>
            ))}
          </select>
        </div>
      )}
      <button type="button" aria-disabled={isBusy || pages.length === 0} onClick={chosen(() => printPages(pages))}>
        {postWords.print}
      </button>
      {shares && (
        <button
          type="button"
          aria-disabled={isBusy}
          onClick={chosen(() => shareOrder(orderOf('pdf', shown())).then(posting.keepShareable))}
        >
          {postWords.share}
        </button>
      )}
      <hr />
      <h2>{postWords.allSheets}</h2>
      {FOLDERS.filter(({ binds }) => binds === 'class' || hasDay).map((format) => item(format, allSheets))}
      <button type="button" aria-disabled={isBusy} onClick={chosen(() => saveOrder(orderOf('pdf', allSheets())))}>
        {postWords.allAsPdf} <kbd>.zip</kbd>
      </button>
      <hr />
      <h2>{postWords.theCourse}</h2>
      {OF_COURSE.map((format) => item(format, shown))}
      <button type="button" aria-haspopup="dialog" onClick={chosen(openLink)}>
        {linkWords.copyLink}
      </button>
    </div>
  );
}

function orderedSheet(sheet: string): OrderedSheet {
  return { sheet, options: pageOptionsOf(posting.state(), sheet) };
}

function allSheets(): ExportOrder['sheets'] {
  const [first, ...rest] = SHEETS.map(({ id }) => orderedSheet(id));
  if (first === undefined) throw new Error('allSheets: there is no sheet');
  return [first, ...rest];
}

/** Popovers stand in the corner of the window until they are told where: this one over the button that opens it. */
function placeAboveButton({ currentTarget: menu, newState }: ToggleEvent<HTMLDivElement>): void {
  if (newState !== 'open') return;
  const button = menu.parentElement?.getBoundingClientRect();
  if (button === undefined) return;
  Object.assign(menu.style, {
    inset: 'auto',
    right: `${Math.max(8, window.innerWidth - button.right)}px`,
    bottom: `${window.innerHeight - button.top + 6}px`,
  });
  menu.style.maxHeight = `${button.top - 12}px`;
}
