import type { BarcodeFacts, Box } from '../../../contract/proof-checks/facts.ts';
import { mainModules } from '../../barcode/modules.ts';
import { levelsOf, rowOf } from './edges.ts';
import { type Measure, measure } from './measure.ts';
import { onSheet, opposite, partAround, type Spot, thousandth, uprightSpot } from './place.ts';
import { type Grey, lightness, negative, redness, upright } from './raster.ts';
import { readAddOn } from './read-add-on.ts';
import type { Sighting } from './scan.ts';
import type { SheetView } from './view.ts';

/** A bar code without the number of its page. */
export type FoundBarcode = Omit<BarcodeFacts, 'page'>;

/** A sighting and the resolution its pixels are counted at. */
export type Placed = Sighting & { dpi: number };

/** Draws a sighting anew, large, and measures it; what the reader told is taken where that fails. */
export function measured(view: SheetView, sighting: Placed): FoundBarcode {
  const sideways = sighting.turned % 180 !== 0;
  const length = sideways ? sighting.bottom - sighting.top : sighting.right - sighting.left;
  // With its add-on a symbol is 95 + 9 + 47 modules long, give or take the gap.
  const module = length / (sighting.addOn === null ? 95 : 151) / sighting.dpi;
  const around = partAround(view, sighting, module);
  const raster = view.draw(around.dpi, around.part);
  const plain = lightness(raster);
  const seen = sighting.inverted ? negative(plain) : plain;
  const spot = scaled(sighting, around.dpi / sighting.dpi, around.part);
  for (const turned of [sighting.turned, opposite(sighting.turned)]) {
    const grey = upright(seen, turned);
    const symbol = measure(grey, {
      modules: mainModules(sighting.digits),
      ...uprightSpot(spot, raster, turned),
    });
    if (symbol === null) break;
    if (symbol === 'turned over') continue;
    const whole = { left: symbol.left, right: symbol.right, top: symbol.top, bottom: symbol.foot };
    return {
      ...told(sighting, symbol, around.dpi / 72),
      box: onSheet(whole, raster, turned, around),
      turned,
      addOn: readAddOn(grey, symbol) ?? sighting.addOn,
      contrast: contrastOf(upright(redness(raster), turned), symbol),
    };
  }
  return roughly(sighting, module);
}

function scaled({ left, top, right, bottom }: Spot, by: number, from: { x: number; y: number }): Spot {
  return {
    left: left * by - from.x,
    right: right * by - from.x,
    top: top * by - from.y,
    bottom: bottom * by - from.y,
  };
}

function told({ digits, inverted }: Sighting, symbol: Measure, perPoint: number) {
  const tenth = (modules: number) => Math.round(modules * 10) / 10;
  return {
    digits,
    inverted,
    modulePt: thousandth(symbol.module / perPoint),
    barHeightPt: thousandth((symbol.barFoot - symbol.top) / perPoint),
    quietLeft: tenth(symbol.quietLeft),
    quietRight: tenth(symbol.quietRight),
  };
}

/** What the reader itself tells of a symbol that could not be measured; `module` in inches. */
function roughly(sighting: Placed, module: number): FoundBarcode {
  const pt = (px: number) => thousandth((px / sighting.dpi) * 72);
  const box: Box = {
    xPt: pt(sighting.left),
    yPt: pt(sighting.top),
    widthPt: pt(sighting.right - sighting.left),
    heightPt: pt(sighting.bottom - sighting.top),
  };
  return {
    digits: sighting.digits,
    addOn: sighting.addOn,
    box,
    turned: sighting.turned,
    modulePt: Math.max(0.001, thousandth(module * 72)),
    barHeightPt: null,
    quietLeft: null,
    quietRight: null,
    inverted: sighting.inverted,
    contrast: null,
  };
}

/** Difference between spaces and bars under red light, 0 to 1. */
function contrastOf(red: Grey, symbol: Measure): number {
  const y = (symbol.top + symbol.barFoot) / 2;
  const start = symbol.startAt(y);
  const { dark, light } = levelsOf(rowOf(red, y), start, start + symbol.right - symbol.left);
  return Math.round(((light - dark) / 255) * 100) / 100;
}
