import type { Stock } from '../../src/contract/pictures.ts';
import { formatDay } from '../lib/dates.ts';
import { Picture } from './picture.tsx';
import { stockLayout } from './stock-layout.ts';

function sentence(stock: Stock): string {
  const pace = stock.perYear === 0 ? 'none was given of late' : `about ${stock.perYear.toFixed(1)} a year go`;
  const end =
    stock.runsOutOn === null
      ? 'at that pace they last for as long as can be told'
      : `at that pace they run out about ${formatDay(stock.runsOutOn)}`;
  return `${stock.free.toLocaleString()} of ${stock.capacity.toLocaleString()} numbers are left on ${formatDay(stock.day)}; ${pace}, and ${end}.`;
}

function draw(stock: Stock, width: number) {
  const layout = stockLayout(stock, width);
  if (!layout) return null;
  const { left, right, bottom, top, todayX, todayY } = layout;
  const late = todayX > width - 110;
  const content = (
    <>
      {layout.levels.map((level) => (
        <g key={level.label}>
          <path d={`M${left} ${level.y}H${right}`} className="line-soft" />
          <text x={left - 7} y={level.y + 4} textAnchor="end" className="say-soft">
            {level.label.toLocaleString()}
          </text>
        </g>
      ))}
      <path d={layout.area} className="stock-area" />
      <path d={layout.line} className="stock-line" />
      {layout.ahead === '' ? null : <path d={layout.ahead} className="stock-ahead" />}
      {layout.ticks.map((tick) => (
        <g key={tick.label}>
          <path d={`M${tick.x} ${bottom}v5`} className="line-bond" />
          <text x={tick.x} y={bottom + 19} textAnchor="middle" className="say-soft">
            {tick.label}
          </text>
        </g>
      ))}
      <path d={`M${todayX} ${top - 6}V${bottom}`} className="line-today" />
      <circle cx={todayX} cy={todayY} r="4" className="mark" />
      <text
        x={todayX + (late ? -9 : 7)}
        y={Math.min(todayY + 22, bottom - 8)}
        textAnchor={late ? 'end' : 'start'}
        className="say-strong"
      >
        {stock.free.toLocaleString()} left
      </text>
      {layout.endX === null ? null : (
        <path d={`M${layout.endX - 4} ${bottom - 4}l8 8m0-8l-8 8`} className="line-sale" />
      )}
    </>
  );
  return { height: layout.height, content };
}

/** How the numbers ran down, and when they run out at the pace of late. */
export function StockPicture({ stock }: { stock: Stock }) {
  return (
    <Picture
      title="Numbers left"
      fileName={`numbers-left-${stock.day}`}
      draw={(width) => draw(stock, width)}
      hint={sentence(stock)}
      words={
        <ul>
          {stock.points.slice(-24).map((point) => (
            <li key={point.day}>
              {formatDay(point.day)}: {point.free.toLocaleString()} left
            </li>
          ))}
        </ul>
      }
    />
  );
}
