import { bytesOf } from './base64.ts';

/** A file as an operation hands it over. */
export interface MadeFile {
  fileName: string;
  mediaType: string;
  base64: string;
}

/** Hands a file that an operation made to the person. */
export function saveMade({ fileName, mediaType, base64 }: MadeFile): void {
  saveFile(fileName, new Blob([bytesOf(base64)], { type: mediaType }));
}

/** Hands a file to the person under this name; where it is kept is theirs to say. */
export function saveFile(fileName: string, file: Blob): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The download has its own hold on the file once it has begun.
  window.setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
