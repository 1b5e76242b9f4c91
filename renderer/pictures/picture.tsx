import { type ReactNode, useRef, useState } from 'react';
import { SaveButtons } from './save-buttons.tsx';
import { useWidth } from './use-width.ts';
import './pictures.css';

export interface PictureProps {
  /** Names the picture, also for those who cannot see it. */
  title: string;
  fileName: string;
  /** Draws the picture for a width; `onLook` shows what is under the pointer or the focus. */
  draw: (width: number, onLook: (text: string) => void) => { height: number; content: ReactNode } | null;
  /** What the shapes and patterns mean. */
  legend?: ReactNode;
  /** Shown while nothing is looked at. */
  hint: string;
  /** The same as words. */
  words: ReactNode;
}

/** A drawing with its legend, a line that tells what is looked at, the same as words, and ways to save it. */
export function Picture({ title, fileName, draw, legend, hint, words }: PictureProps) {
  const { box, width } = useWidth();
  const [looked, setLooked] = useState<string>();
  const drawing = useRef<SVGSVGElement>(null);
  const drawn = width > 0 ? draw(width, setLooked) : null;
  return (
    <figure className="drawing" aria-label={title}>
      {legend}
      <div className="drawing-sheet" ref={box}>
        {drawn ? (
          // biome-ignore lint/a11y/useSemanticElements: a drawing is no group of form fields.
          <svg
            ref={drawing}
            role="group"
            aria-label={title}
            className="drawing-svg"
            viewBox={`0 0 ${width} ${drawn.height}`}
            width={width}
            height={drawn.height}
            onPointerLeave={() => setLooked(undefined)}
          >
            {drawn.content}
          </svg>
        ) : null}
      </div>
      <figcaption className="drawing-foot">
        <p className={looked === undefined ? 'drawing-look soft' : 'drawing-look'}>{looked ?? hint}</p>
        <details className="drawing-words">
          <summary>The same as words</summary>
          {words}
        </details>
        <SaveButtons
          title={title}
          fileName={fileName}
          withDrawing={async (use) => {
            if (drawing.current) await use(drawing.current);
          }}
        />
      </figcaption>
    </figure>
  );
}

/** A field of the drawing that leads somewhere and tells about itself when it is pointed at or has the focus. */
export function Spot(props: {
  to: string;
  text: string;
  onLook: (text: string) => void;
  /** Letters beside the field; they are no part of the link, whose name says the same and more. */
  caption: ReactNode;
  children: ReactNode;
}) {
  const { to, text, onLook, caption, children } = props;
  return (
    <g>
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: it holds letters alone, nothing that takes the focus. */}
      <g aria-hidden="true" className="spot-caption">
        {caption}
      </g>
      <a
        href={to}
        className="spot"
        aria-label={text}
        onPointerEnter={() => onLook(text)}
        onFocus={() => onLook(text)}
      >
        {children}
      </a>
    </g>
  );
}
