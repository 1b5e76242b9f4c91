import type { FormatStanding } from '../../src/contract/terms.ts';

// Every standing has a pattern of its own, so that a picture is read without its colours: outline, dots, hatching,
// solid, stripes, a line.

/** The patterns of one drawing; `id` keeps two drawings of a page apart. */
export function Patterns({ id }: { id: string }) {
  const stripes = (name: string, gap: number, className: string, turn: number) => (
    <pattern
      id={`${id}-${name}`}
      width={gap}
      height={gap}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${turn})`}
    >
      <rect width={gap} height={gap} className="tile-ground" />
      <rect width={gap * 0.45} height={gap} className={className} />
    </pattern>
  );
  return (
    <defs>
      <pattern id={`${id}-dots`} width="6" height="6" patternUnits="userSpaceOnUse">
        <rect width="6" height="6" className="tile-ground" />
        <circle cx="3" cy="3" r="1.2" className="tile-ink" />
      </pattern>
      {stripes('hatch', 5, 'tile-ink', 45)}
      {stripes('bars', 8, 'tile-care', -45)}
      {stripes('cross', 4, 'tile-stop', 90)}
    </defs>
  );
}

const FILLS: Record<FormatStanding, string> = {
  planned: 'none',
  committed: 'dots',
  proofing: 'hatch',
  live: 'solid',
  retiring: 'bars',
  retired: 'line',
  cancelled: 'line',
};

/** One stretch of a lane, drawn by its standing. */
export function Stretch(props: {
  id: string;
  standing: FormatStanding;
  x: number;
  y: number;
  width: number;
  height: number;
}) {
  const { id, standing, x, y, width, height } = props;
  const fill = FILLS[standing];
  if (fill === 'line') {
    const middle = y + height / 2;
    const end =
      standing === 'cancelled'
        ? `M${x - 4} ${middle - 4}l8 8M${x - 4} ${middle + 4}l8-8`
        : `M${x} ${y}v${height}`;
    return <path d={`M${x} ${middle}h${width}${end}`} className={`stretch stretch-${standing}`} />;
  }
  const paint = fill === 'none' || fill === 'solid' ? undefined : `url(#${id}-${fill})`;
  return (
    <rect
      x={x}
      y={y}
      width={width}
      height={height}
      className={`stretch stretch-${standing}`}
      {...(paint === undefined ? {} : { style: { fill: paint } })}
    />
  );
}

const ORDER: readonly FormatStanding[] = [
  'planned',
  'committed',
  'proofing',
  'live',
  'retiring',
  'retired',
  'cancelled',
];

/** What the patterns of the standings mean; `of` names those that are drawn. */
export function StretchLegend({ id, of }: { id: string; of: ReadonlySet<FormatStanding> }) {
  return (
    <ul className="drawing-legend" aria-label="What the patterns mean">
      {ORDER.filter((standing) => of.has(standing)).map((standing) => (
        <li key={standing}>
          <svg width="34" height="14" viewBox="0 0 34 14" aria-hidden="true" focusable="false">
            <Patterns id={`${id}-${standing}`} />
            <Stretch id={`${id}-${standing}`} standing={standing} x={5} y={1} width={26} height={12} />
          </svg>
          <span>{standing}</span>
        </li>
      ))}
    </ul>
  );
}
