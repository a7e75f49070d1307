import { scaleLinear, type ScaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { Point, ShipPicture } from '../../../core/views';

export interface ShipScales {
  readonly x: ScaleLinear<number, number>;
  /** Height above the surface of the water, in metres, to the drawing. */
  readonly y: ScaleLinear<number, number>;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly perMetre: number;
}

const LEFT = 52;
const EDGE = 14;
const HEAD = 30;
const BED = 28;

/** Room above the water that the picture needs: the ship with all that stands on it. */
export function airDraught(picture: ShipPicture): number {
  return Math.max(picture.depth * 1.15, ...picture.parts.map(part => part.top)) - picture.draught;
}

/** One scale for height, depth and length. */
export function shipScales(picture: ShipPicture, width: number, tallest: number): ShipScales {
  const air = airDraught(picture);
  const span = air + Math.max(picture.waterDepth, picture.draught * 1.2);
  const along = (width - LEFT - EDGE * 2) / (picture.length * 1.04);
  const perMetre = Math.min(along, (tallest - HEAD - BED) / span);
  const used = picture.length * perMetre;
  const start = LEFT + (width - LEFT - used) / 2;
  const x = scaleLinear([0, picture.length], [start, start + used]);
  const y = scaleLinear([air, air - span], [HEAD, HEAD + span * perMetre]);
  return { x, y, left: LEFT, right: width, top: HEAD, bottom: y(-picture.waterDepth), perMetre };
}

/** An outline in metres as a path of the drawing; `keel` is the height of the keel above the surface. */
export function outlinePath(points: readonly Point[], scales: ShipScales, keel: number): string {
  const path = line<Point>()
    .x(point => scales.x(point.along))
    .y(point => scales.y(keel + point.up))([...points]);
  return `${path ?? ''}Z`;
}
