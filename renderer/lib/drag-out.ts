import type { DragEvent } from 'react';
import { bytesOf } from './base64.ts';
import type { MadeFile } from './save-file.ts';

/**
 * Lets a picture of the page be dragged to another program as the file it stands for: the desktop window lays it
 * down as a real file, a browser offers it as a download where it can.
 */
export function dragAsFile(event: DragEvent, { fileName, mediaType, base64 }: MadeFile): void {
  if (!window.editionLedger) {
    event.dataTransfer.setData('DownloadURL', `${mediaType}:${fileName}:data:${mediaType};base64,${base64}`);
    return;
  }
  event.preventDefault();
  window.editionLedger.dragOut(fileName, bytesOf(base64));
}
