import { useEffect, useRef, useState } from 'react';
import { saveFile } from '../../lib/save-file.ts';
import { announce } from '../../status.ts';
import { Button } from '../../ui/index.ts';
import { type NumberFilter, numbersCsv } from './export-numbers.ts';

interface ExportButtonProps {
  filter: NumberFilter;
  /** File name without its ending. */
  fileName: string;
  disabled: boolean;
}

/** Saves the numbers that the table shows, all pages of them, as a CSV file; a long reading can be stopped. */
export function ExportButton({ filter, fileName, disabled }: ExportButtonProps) {
  const [progress, setProgress] = useState<{ read: number; of: number }>();
  const stop = useRef(false);
  useEffect(
    () => () => {
      stop.current = true;
    },
    [],
  );
  const run = async () => {
    stop.current = false;
    setProgress({ read: 0, of: 0 });
    try {
      const file = await numbersCsv(
        filter,
        (read, of) => setProgress({ read, of }),
        () => stop.current,
      );
      if (file) {
        saveFile(`${fileName}.csv`, file);
        announce(`The numbers are in ${fileName}.csv, in your downloads.`);
      }
    } catch (thrown) {
      announce(thrown instanceof Error ? thrown.message : String(thrown), 'refused');
    }
    setProgress(undefined);
  };
  if (progress)
    return (
      <span className="row">
        <span className="soft">
          Read {progress.read.toLocaleString()} of {progress.of.toLocaleString()}
        </span>
        <Button
          onClick={() => {
            stop.current = true;
          }}
        >
          Stop
        </Button>
      </span>
    );
  return (
    <Button disabled={disabled} reason="There is no number to export." onClick={() => void run()}>
      Export CSV
    </Button>
  );
}
