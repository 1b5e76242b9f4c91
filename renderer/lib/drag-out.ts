import type { DragEvent } from 'react';

/** A file as an operation hands it over. */
export interface MadeFile {
  fileName: string;
  mediaType: string;
  base64: string;
}

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
  window.editionLedger.dragOut(
    fileName,
    Uint8Array.from(atob(base64), (char) => char.charCodeAt(0)),
  );
}
