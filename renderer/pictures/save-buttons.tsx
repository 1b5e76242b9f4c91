import { announce } from '../status.ts';
import { Button } from '../ui/index.ts';
import { savePng, saveSvg } from './export.ts';
import { printPicture } from './print.ts';
import './pictures.css';
import './surroundings.css';

export interface SaveButtonsProps {
  /** Names the picture. */
  title: string;
  /** File name without its ending. */
  fileName: string;
  /** Hands the drawing to `use`, which is done with it when its promise is settled. */
  withDrawing: (use: (drawing: SVGSVGElement) => Promise<void>) => Promise<void>;
}

/** The ways a picture leaves the screen: as lines, as dots, on paper. */
export function SaveButtons({ title, fileName, withDrawing }: SaveButtonsProps) {
  const attempt = async (use: (drawing: SVGSVGElement) => Promise<void>) => {
    try {
      await withDrawing(use);
    } catch (thrown) {
      announce(thrown instanceof Error ? thrown.message : String(thrown), 'refused');
    }
  };
  const save = (as: 'svg' | 'png') =>
    attempt(async (drawing) => {
      if (as === 'svg') saveSvg(drawing, fileName);
      else await savePng(drawing, fileName);
      announce(`${fileName}.${as} goes to your downloads.`);
    });
  return (
    <div className="row drawing-save">
      <Button kind="quiet" label={`Save as SVG: ${title}`} onClick={() => void save('svg')}>
        Save as SVG
      </Button>
      <Button kind="quiet" label={`Save as PNG: ${title}`} onClick={() => void save('png')}>
        Save as PNG
      </Button>
      <Button
        kind="quiet"
        label={`Print: ${title}`}
        onClick={() => void attempt((drawing) => printPicture(drawing, title))}
      >
        Print
      </Button>
    </div>
  );
}
