import {
  difference,
  givenFrom,
  over,
  priced,
  rounded,
  scaled,
  sum,
  times,
  unity,
  type Block,
  type Step,
} from '../sheet';
import { ASSUMPTIONS } from './assumptions';
import { MEASURES } from './measures';
import type { Particular, ShipGivens } from './take-off';

/** The measures that follow from the particulars alone. */
export interface Geometry {
  readonly length: Step<'m'>;
  readonly beam: Step<'m'>;
  readonly depth: Step<'m'>;
  readonly 'draught-light': Step<'m'>;
  readonly 'draught-full': Step<'m'>;
  readonly lightship: Step<'t'>;
  readonly 'full-displacement': Step<'t'>;
  readonly 'hull-volume': Step<'m3'>;
  readonly 'superstructure-volume': Step<'m3'>;
  readonly 'enclosed-volume': Step<'m3'>;
  readonly 'wetted-surface': Step<'m2'>;
  readonly 'freeboard-area': Step<'m2'>;
  readonly 'accommodation-area': Step<'m2'>;
  readonly 'machinery-volume': Step<'m3'>;
  readonly 'topside-removed': Step<'t'>;
}

/**
 * The shape of the ship from its particulars.
 * @source Watson, Practical Ship Design (block coefficient at 0.8 of the depth); UFC 4-159-03 equation 18
 * (Denny-Mumford wetted surface S = 1.7 L T + V ÷ T).
 */
export function geometry(block: Block, ship: ShipGivens): Geometry {
  const from = <U extends 'm' | '1' | 't/m3' | 'm2/m3'>(key: string, title: string, unit: U) =>
    block.given(`type-${key}`, `${title} of the hull type`, unit, ofType(ship, key, unit));
  const length = particular(block, ship, 'length', 'length', 'm', undefined);
  const proportion = (name: Particular, key: 'beam' | 'depth' | 'draught-full', ratio: string): Step<'m'> =>
    particular(block, ship, name, key, 'm', () =>
      rounded(scaled(length, from(ratio, `${MEASURES[key].title} over length`, '1')), 3),
    );
  const beam = proportion('beam', 'beam', 'beam-per-length');
  const depth = proportion('depth', 'depth', 'depth-per-length');
  const draughtFull = proportion('draughtFull', 'draught-full', 'draught-full-per-length');
  const block_ = particular(block, ship, 'blockCoefficient', undefined, '1', () =>
    from('block-coefficient', 'Block coefficient', '1'),
  );
  const box = block.place('length-beam-depth', 'Length × beam × depth', times(times(length, beam), depth));
  const usual = block.place(
    'lightship-of-type',
    'Lightship of a usual ship of this type and size',
    rounded(priced(box, from('lightship-per-lbd', 'Lightship over length × beam × depth', 't/m3')), 1),
  );
  const lightship = particular(block, ship, 'lightship', 'lightship', 't', () => rounded(usual, 1));
  // A heavier ship floats deeper, in proportion: her sides stand nearly straight about the light waterline.
  const draughtLight = particular(block, ship, 'draughtLight', 'draught-light', 'm', () =>
    rounded(
      scaled(
        scaled(
          length,
          from('draught-light-per-length', `${MEASURES['draught-light'].title} over length`, '1'),
        ),
        rounded(over(lightship, usual), 6),
      ),
      3,
    ),
  );
  const water = block.given('sea-water', 'Sea water', 't/m3', givenFrom(ASSUMPTIONS.seaWater, 't/m3'));
  const moulded = scaled(times(times(length, beam), draughtFull), block_);
  const fullness = fullnessAtDepth(block, block_, depth, draughtFull);
  const hullVolume = place(block, 'hull-volume', rounded(scaled(box, fullness), 0));
  const superstructure = place(
    block,
    'superstructure-volume',
    rounded(
      scaled(
        box,
        from('superstructure-volume-share', 'Superstructure volume over length × beam × depth', '1'),
      ),
      0,
    ),
  );
  const enclosed = place(block, 'enclosed-volume', sum(hullVolume, superstructure));
  return {
    length,
    beam,
    depth,
    'draught-light': draughtLight,
    'draught-full': draughtFull,
    lightship,
    'full-displacement': place(block, 'full-displacement', rounded(priced(moulded, water), 1)),
    'hull-volume': hullVolume,
    'superstructure-volume': superstructure,
    'enclosed-volume': enclosed,
    'wetted-surface': place(
      block,
      'wetted-surface',
      rounded(wetted(block, length, beam, draughtFull, block_), 1),
    ),
    'freeboard-area': place(
      block,
      'freeboard-area',
      rounded(freeboard(block, length, depth, draughtFull), 1),
    ),
    'accommodation-area': place(
      block,
      'accommodation-area',
      rounded(
        priced(
          enclosed,
          from('accommodation-area-share', 'Accommodation area over enclosed volume', 'm2/m3'),
        ),
        0,
      ),
    ),
    'machinery-volume': place(
      block,
      'machinery-volume',
      rounded(
        scaled(hullVolume, from('machinery-volume-share', 'Machinery spaces over hull volume', '1')),
        0,
      ),
    ),
    'topside-removed': topside(
      block,
      ship,
      lightship,
      from('topside-weight-share', 'Topside weight over lightship', '1'),
    ),
  };
}

function place<U extends 'm2' | 'm3' | 't'>(
  block: Block,
  key: keyof typeof MEASURES,
  step: Step<U>,
): Step<U> {
  return block.place(key, MEASURES[key].title, step);
}

function ofType(ship: ShipGivens, key: string, unit: 'm' | '1' | 't/m3' | 'm2/m3') {
  const figure = ship.type.quantities[key];
  return figure && givenFrom(figure, unit, `templates/hull-types/${ship.type.id}/${key}`);
}

/** The document's figure where it gives one (a faulty one is absent, nothing stands in for it), else what follows. */
function particular<U extends 'm' | '1' | 't'>(
  block: Block,
  ship: ShipGivens,
  name: Particular,
  key: keyof typeof MEASURES | undefined,
  unit: U,
  follows: (() => Step<U>) | undefined,
): Step<U> {
  const id = key ?? 'block-coefficient';
  const title = key === undefined ? 'Block coefficient' : MEASURES[key].title;
  const given = ship.particulars[name];
  if (given !== undefined || follows === undefined) return block.given(id, title, unit, given);
  const step = follows();
  return step.home === undefined ? block.place(id, title, step) : step;
}

/** Cb + (1 − Cb)(0.8 D − T) ÷ (3 T): how full the hull is at 0.8 of its depth. */
function fullnessAtDepth(block: Block, fullness: Step<'1'>, depth: Step<'m'>, draught: Step<'m'>): Step<'1'> {
  const share = block.given(
    'fullness-share',
    'Share of the depth',
    '1',
    givenFrom(ASSUMPTIONS.fullnessShare, '1'),
  );
  const slope = block.given(
    'fullness-slope',
    'Draughts of rise to a full waterplane',
    '1',
    givenFrom(ASSUMPTIONS.fullnessSlope, '1'),
  );
  const rise = block.place(
    'rise-over-draught',
    'Rise above the draught over the draughts of rise',
    rounded(over(difference(scaled(depth, share), draught), scaled(draught, slope)), 6),
  );
  const left = difference(unity('1'), fullness);
  return block.place(
    'fullness-at-depth',
    'Fullness at 0.8 of the depth',
    rounded(sum(fullness, scaled(left, rise)), 4),
  );
}

/** 1.7 L T + V ÷ T, with V ÷ T = Cb L B. */
function wetted(
  block: Block,
  length: Step<'m'>,
  beam: Step<'m'>,
  draught: Step<'m'>,
  fullness: Step<'1'>,
): Step<'m2'> {
  const factor = block.given('mumford', 'Factor of the side', '1', givenFrom(ASSUMPTIONS.mumford, '1'));
  return sum(scaled(times(length, draught), factor), scaled(times(length, beam), fullness));
}

function freeboard(block: Block, length: Step<'m'>, depth: Step<'m'>, draught: Step<'m'>): Step<'m2'> {
  const perimeter = block.given(
    'perimeter',
    'Perimeter over length',
    '1',
    givenFrom(ASSUMPTIONS.perimeter, '1'),
  );
  const height = block.place('freeboard', 'Freeboard', difference(depth, draught));
  return scaled(times(length, height), perimeter);
}

function topside(block: Block, ship: ShipGivens, lightship: Step<'t'>, weight: Step<'1'>): Step<'t'> {
  const share = block.given('topside-share', 'Share of the topside taken off', '1', ship.topsideShare);
  return place(block, 'topside-removed', rounded(scaled(lightship, weight, share), 1));
}
