/**
 * What the take-off hands on, by key: the bases that drivers scale from. Geometry comes from the particulars,
 * the rest from the site and the plan. Every measure is a named single value of the work sheet.
 */
export const MEASURES = {
  length: { title: 'Length overall', unit: 'm' },
  beam: { title: 'Beam', unit: 'm' },
  depth: { title: 'Depth to the upper deck', unit: 'm' },
  'draught-light': { title: 'Draught light', unit: 'm' },
  'draught-full': { title: 'Draught full', unit: 'm' },
  lightship: { title: 'Lightship', unit: 't' },
  'full-displacement': { title: 'Full displacement', unit: 't' },
  'hull-volume': { title: 'Volume inside the hull', unit: 'm3' },
  'superstructure-volume': { title: 'Volume inside the superstructure', unit: 'm3' },
  'enclosed-volume': { title: 'Enclosed volume', unit: 'm3' },
  'wetted-surface': { title: 'Wetted surface, full draught', unit: 'm2' },
  'freeboard-area': { title: 'Shell above the waterline', unit: 'm2' },
  'accommodation-area': { title: 'Accommodation deck area', unit: 'm2' },
  'machinery-volume': { title: 'Volume of machinery spaces', unit: 'm3' },
  'tank-capacity': { title: 'Capacity of oil tanks', unit: 'm3' },
  'tank-count': { title: 'Oil tanks', unit: 'each' },
  'tank-area': { title: 'Internal area of oil tanks', unit: 'm2' },
  'ballast-capacity': { title: 'Capacity of ballast tanks', unit: 'm3' },
  'compartment-count': { title: 'Watertight compartments', unit: 'each' },
  'tow-distance': { title: 'Tow distance', unit: 'nmi' },
  'yard-distance': { title: 'Road distance to the disposal sites', unit: 'm' },
  'water-depth': { title: 'Water depth at the site', unit: 'm' },
  'topside-removed': { title: 'Topside weight removed', unit: 't' },
  'opening-count': { title: 'Shell openings', unit: 'each' },
  'opening-cut-length': { title: 'Length of cut for shell openings', unit: 'm' },
  'opening-thickness': { title: 'Plate thickness at the openings', unit: 'mm' },
  'vent-count': { title: 'Air escape openings', unit: 'each' },
  'inner-opening-count': { title: 'Openings in bulkheads and decks', unit: 'each' },
  'monitoring-years': { title: 'Years of monitoring', unit: 'year' },
  one: { title: 'One project', unit: 'each' },
} as const satisfies Record<string, { title: string; unit: string }>;

export type MeasureKey = keyof typeof MEASURES;
