/** What is done with files that were written: saved, shared or printed. */
import { saveDownload } from '../file/download.ts';
import type { ExportedOrder, ExportOrder } from './export-order.ts';
import { exporter } from './exporter.ts';

/** A file that is written and waits to be shared: browsers let a page share only just after something was pressed. */
export interface Shareable {
  readonly order: ExportOrder;
  readonly file: File;
}

/** Writes what was ordered and hands it to the person as a download. */
export async function saveOrder(order: ExportOrder): Promise<void> {
  const result = await exporter.write(order);
  if (result?.kind !== 'exported') return;
  saveDownload(fileOf(result), result.file.name);
}

/** Writes what was ordered and offers it to the programs of the device; what may not be shared any more is answered. */
export async function shareOrder(order: ExportOrder): Promise<Shareable | null> {
  const result = await exporter.write(order);
  if (result?.kind !== 'exported') return null;
  const file = fileOf(result);
  return (await share(file)) ? null : { order, file };
}

/** Offers a file to the programs of the device. False when the browser wants something to be pressed first. */
export async function share(file: File): Promise<boolean> {
  try {
    await navigator.share({ files: [file], title: file.name });
    return true;
  } catch (failure) {
    // A person who closes the list has answered.
    return !(failure instanceof DOMException && failure.name === 'NotAllowedError');
  }
}

/** Whether the browser shares files at all. */
export function canShare(): boolean {
  const sample = new File([], 'sheet.pdf', { type: 'application/pdf' });
  return typeof navigator.canShare === 'function' && navigator.canShare({ files: [sample] });
}

function fileOf({ file: { name, type, bytes } }: ExportedOrder): File {
  return new File([new Uint8Array(bytes)], name, { type });
}
