import { type DragEvent, useEffect, useRef, useState } from 'react';
import { decodeText } from '../lib/file-text.ts';
import { classNames } from './class-names.ts';
import { Field, type FieldCommon } from './field.tsx';

export interface FileInputProps extends FieldCommon {
  /** What the chooser offers, such as `.csv,text/csv`. */
  accept: string;
  /** The text of the file that was chosen or dropped, and its name. */
  onText?: ((text: string, fileName: string) => void) | undefined;
  /** The file itself, where it is not to be read as text here. */
  onFile?: ((file: File) => void) | undefined;
  /** Files larger than this many bytes are not read. */
  maxBytes: number;
}

const MEGABYTE = 1_000_000;

/** A browser would leave the page for a file that is dropped beside its place. */
function useNoStrayDrop(): void {
  useEffect(() => {
    const stay = (event: Event) => event.preventDefault();
    for (const name of ['dragover', 'drop']) window.addEventListener(name, stay);
    return () => {
      for (const name of ['dragover', 'drop']) window.removeEventListener(name, stay);
    };
  }, []);
}

/** A file of the person's own, to be chosen or dropped here; it is read in the window and goes nowhere else. */
export function FileInput(props: FileInputProps) {
  const { onText, onFile, maxBytes } = props;
  const [over, setOver] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const chooser = useRef<HTMLInputElement>(null);
  useNoStrayDrop();
  const read = async (file: File | undefined) => {
    if (!file) return;
    setTrouble(undefined);
    if (file.size > maxBytes)
      return setTrouble(`${file.name} is larger than ${maxBytes / MEGABYTE} MB; choose a smaller file.`);
    onFile?.(file);
    if (!onText) return;
    try {
      onText(decodeText(new Uint8Array(await file.arrayBuffer())), file.name);
    } catch {
      setTrouble(`${file.name} cannot be read; see that it is still there and choose it again.`);
    }
  };
  const onDrop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const { files } = event.dataTransfer;
    if (props.disabled || files.length === 0) return;
    // The chooser shows the name of what was dropped beside it.
    if (chooser.current) chooser.current.files = files;
    void read(files[0]);
  };
  return (
    <Field {...props} error={trouble ?? props.error}>
      {(ids) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a shortcut for the mouse; the chooser inside serves keyboard and screen reader.
        <div
          className={classNames('file-drop', over && 'file-drop-over')}
          onDragOver={(event) => {
            event.preventDefault();
            setOver(true);
          }}
          onDragLeave={() => setOver(false)}
          onDrop={onDrop}
        >
          <input
            {...ids}
            ref={chooser}
            type="file"
            name={props.name}
            accept={props.accept}
            disabled={props.disabled}
            // The same file can be chosen again once it was mended.
            onClick={(event) => {
              event.currentTarget.value = '';
            }}
            onChange={(event) => void read(event.target.files?.[0])}
          />
          <span className="soft">or drop it here</span>
        </div>
      )}
    </Field>
  );
}
