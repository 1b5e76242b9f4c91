import { useEffect, useState } from 'react';
import { useLocation } from 'wouter';

let dropped: File | undefined;

/** The file that was dropped on the Catalogue before the import page opened; asked for once. */
export function takeDropped(): File | undefined {
  const file = dropped;
  dropped = undefined;
  return file;
}

/** Whether what is dragged over the window holds files. */
const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;

/** A file dropped anywhere on the screen opens the import page with it. Answers whether one is over the window. */
export function useDropAnywhere(enabled: boolean): boolean {
  const [over, setOver] = useState(false);
  const [, navigate] = useLocation();
  useEffect(() => {
    if (!enabled) return;
    const drag = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      const [file] = event.dataTransfer?.files ?? [];
      setOver(false);
      if (!file) return;
      event.preventDefault();
      dropped = file;
      navigate('/catalogue/import');
    };
    window.addEventListener('dragover', drag);
    window.addEventListener('dragleave', leave);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', drag);
      window.removeEventListener('dragleave', leave);
      window.removeEventListener('drop', drop);
    };
  }, [enabled, navigate]);
  return over;
}
