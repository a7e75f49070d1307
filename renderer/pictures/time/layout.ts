import { scaleLinear, type ScaleLinear } from 'd3-scale';
import { packNames, type ScheduleBar, type ScheduleLane, type ScheduleView } from '../../../core/views';
import { lines, textWidth } from '../text-width';

export const AXIS_HEIGHT = 72;
/** Top of the first lane: the axis is a picture of its own above. */
const TOP = 2;
const SUB_LANE = 21;
/** Middle of a bar in its sub-lane. */
export const MIDDLE = 10;
const LANE_EDGE = 3;
/** Height of a line of a lane's name. */
export const NAME_LINE = 16;

export interface PlacedBar {
  readonly bar: ScheduleBar;
  readonly lane: string;
  readonly x: number;
  readonly width: number;
  readonly nameX: number;
  /** Top of the sub-lane. */
  readonly y: number;
}

export interface PlacedLane {
  readonly lane: ScheduleLane;
  /** Its name in lines that fit beside its mark. */
  readonly name: readonly string[];
  readonly y: number;
  readonly height: number;
}

export interface TimeLayout {
  readonly x: ScaleLinear<number, number>;
  readonly left: number;
  readonly right: number;
  readonly lanes: readonly PlacedLane[];
  readonly bars: readonly PlacedBar[];
  /** Bottom of the lanes. */
  readonly bottom: number;
}

/** Where everything of the time chart stands for a width: names are measured and packed, never shortened. */
export function timeLayout(view: ScheduleView, width: number): TimeLayout {
  const left = width > 1400 ? 206 : 166;
  const right = width - 2;
  const x = scaleLinear([view.from, view.to], [left, right]);
  let y = TOP;
  const lanes: PlacedLane[] = [];
  const bars: PlacedBar[] = [];
  for (const lane of view.lanes) {
    const { packed, lanes: count } = packNames(
      lane.bars.map(bar => ({
        id: bar.id,
        from: x(bar.from),
        to: x(bar.to),
        nameWidth: textWidth(bar.title),
      })),
      right,
      8,
    );
    const name = lines(lane.title, left - 74);
    const height = Math.max(count * SUB_LANE, name.length * NAME_LINE + 4) + LANE_EDGE * 2;
    lanes.push({ lane, name, y, height });
    for (const place of packed) {
      const bar = lane.bars.find(one => one.id === place.id);
      if (bar === undefined) continue;
      const from = x(bar.from);
      bars.push({
        bar,
        lane: lane.id,
        x: from,
        width: Math.max(2, x(bar.to) - from - 1),
        nameX: place.nameAt,
        y: y + LANE_EDGE + place.lane * SUB_LANE,
      });
    }
    y += height;
  }
  return { x, left, right, lanes, bars, bottom: y };
}
