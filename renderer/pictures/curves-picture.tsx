import type { MoneyCurve, MoneyCurves } from '../../src/contract/money.ts';
import { formatMoney, majorText } from '../lib/money.ts';
import { type CurveLine, type CurvesLayout, curvesLayout } from './curves-layout.ts';
import { Picture } from './picture.tsx';

const AXIS: Record<MoneyCurves['over'], string> = {
  price: 'List price',
  pages: 'Pages',
  discount: 'Discount, %',
};

const TITLES: Record<MoneyCurves['over'], string> = {
  price: 'What a copy keeps at other list prices',
  pages: 'What a copy keeps with other page counts',
  discount: 'What a copy keeps at other discounts',
};

/** A place on the ground line as it is read: an amount, a number of pages, or a percentage. */
function placeText({ over, currency }: MoneyCurves, x: number): string {
  if (over === 'price') return formatMoney(x, currency);
  return over === 'pages' ? `${x.toLocaleString()} pages` : `${(x / 100).toLocaleString()} %`;
}

function tickText({ over, currency }: MoneyCurves, x: number): string {
  if (over === 'price') return majorText(x, currency);
  return over === 'pages' ? x.toLocaleString() : (x / 100).toLocaleString();
}

/** 'Printworks Direct: at EUR 14.99 a copy keeps EUR 5.09.' */
function inWords(curves: MoneyCurves, { channelName, now, note, points }: MoneyCurve): string {
  const kept = (at: { x: number; keptMinor: number | null }) =>
    at.keptMinor === null
      ? ''
      : `at ${placeText(curves, at.x)} ${formatMoney(at.keptMinor, curves.currency)}`;
  const known = points.filter(({ keptMinor }) => keptMinor !== null);
  const some = [0, 0.25, 0.5, 0.75, 1].map((part) => known[Math.round(part * (known.length - 1))]);
  const told = [...new Set(some)].flatMap((at) => (at ? [kept(at)] : []));
  const today = now ? kept(now) : '';
  return [
    `${channelName}: ${today === '' ? 'what a copy keeps today is not known' : `a copy keeps today, ${today}`}`,
    told.length > 1 ? `; ${told.join(', ')}` : '',
    '.',
    note === '' ? '' : ` ${note}`,
  ].join('');
}

function Axes({ layout, curves }: { layout: CurvesLayout; curves: MoneyCurves }) {
  const { left, right, top, bottom, zeroY } = layout;
  return (
    <>
      {layout.yTicks.map(({ y, value }) => (
        <g key={value}>
          <path d={`M${left} ${y}H${right}`} className="line-soft" />
          <text x={left - 7} y={y + 4} textAnchor="end" className="say-soft">
            {majorText(value, curves.currency)}
          </text>
        </g>
      ))}
      {layout.xTicks.map(({ x, value }) => (
        <g key={value}>
          <path d={`M${x} ${bottom}v5`} className="line-bond" />
          <text x={x} y={bottom + 18} textAnchor="middle" className="say-soft">
            {tickText(curves, value)}
          </text>
        </g>
      ))}
      {zeroY === null ? null : <path d={`M${left} ${zeroY}H${right}`} className="line-sale" />}
      <path d={`M${left} ${top}V${bottom}`} className="line-bond" />
      <text x={right} y={bottom + 34} textAnchor="end" className="say-soft">
        {AXIS[curves.over]}
        {curves.over === 'price' ? `, ${curves.currency}` : ''}
      </text>
    </>
  );
}

interface LineProps {
  line: CurveLine;
  text: string;
  named: boolean;
  onLook: (text: string) => void;
}

function Line({ line, text, named, onLook }: LineProps) {
  const { path, dash, now, end, curve } = line;
  return (
    <g onPointerEnter={() => onLook(text)}>
      {path === '' ? null : (
        <path d={path} className="curve" strokeDasharray={dash === '' ? undefined : dash} />
      )}
      {now ? <circle cx={now.x} cy={now.y} r="4.5" className="mark" /> : null}
      {named && end ? (
        <>
          <path d={`M${end.x + 3} ${end.y}L${end.x + 11} ${end.labelY}`} className="line-soft" />
          <text x={end.x + 14} y={end.labelY + 4}>
            {curve.channelName.length > 21 ? `${curve.channelName.slice(0, 20)}…` : curve.channelName}
          </text>
        </>
      ) : null}
    </g>
  );
}

function Legend({ lines }: { lines: readonly CurveLine[] }) {
  return (
    <ul className="drawing-legend" aria-label="What the lines mean">
      {lines.map(({ curve, dash }) => (
        <li key={curve.listingId}>
          <svg width="34" height="14" viewBox="0 0 34 14" aria-hidden="true" focusable="false">
            <path d="M1 7H33" className="curve" strokeDasharray={dash === '' ? undefined : dash} />
          </svg>
          <span>{curve.channelName}</span>
        </li>
      ))}
      <li>
        <svg width="16" height="14" viewBox="0 0 16 14" aria-hidden="true" focusable="false">
          <circle cx="8" cy="7" r="4.5" className="mark" />
        </svg>
        <span>today</span>
      </li>
    </ul>
  );
}

/** What a copy keeps on each channel, as lines over price, pages or discount. */
export function CurvesPicture({ curves }: { curves: MoneyCurves }) {
  const known = curvesLayout(curves, 800);
  const words = (
    <ul>
      {curves.curves.map((curve) => (
        <li key={curve.listingId}>{inWords(curves, curve)}</li>
      ))}
    </ul>
  );
  if (!known) return <div className="soft">Nothing can be drawn yet. {words}</div>;
  return (
    <Picture
      title={`${TITLES[curves.over]}: ${curves.formatName}, ${curves.currency}`}
      fileName={`kept-by-${curves.over}-${curves.currency}`}
      legend={<Legend lines={known.lines.filter(({ end }) => end !== null)} />}
      hint="Below the heavy line a copy is sold at a loss. Point at a line to read it; the words below say the same."
      draw={(width, onLook) => {
        const layout = curvesLayout(curves, width);
        if (!layout) return null;
        const content = (
          <>
            <Axes layout={layout} curves={curves} />
            {layout.lines.map((line) => (
              <Line
                key={line.curve.listingId}
                line={line}
                text={inWords(curves, line.curve)}
                named={width >= 520}
                onLook={onLook}
              />
            ))}
          </>
        );
        return { height: layout.height, content };
      }}
      words={words}
    />
  );
}
