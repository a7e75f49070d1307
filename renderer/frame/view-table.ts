export type ViewId =
  | 'vessel'
  | 'materials'
  | 'sinking'
  | 'work'
  | 'rates'
  | 'schedule'
  | 'budget'
  | 'funding'
  | 'bid'
  | 'risk'
  | 'compare'
  | 'review'
  | 'decision'
  | 'documents';

export interface ViewGroup {
  readonly title: string;
  readonly views: readonly { readonly id: ViewId; readonly title: string }[];
}

/** The views, grouped by what they are about. */
export const VIEW_GROUPS: readonly ViewGroup[] = [
  {
    title: 'The ship',
    views: [
      { id: 'vessel', title: 'Vessel' },
      { id: 'materials', title: 'Materials' },
      { id: 'sinking', title: 'Sinking' },
    ],
  },
  {
    title: 'The work',
    views: [
      { id: 'work', title: 'Work' },
      { id: 'rates', title: 'Rates' },
      { id: 'schedule', title: 'Schedule' },
    ],
  },
  {
    title: 'The money',
    views: [
      { id: 'budget', title: 'Budget' },
      { id: 'funding', title: 'Funding' },
      { id: 'bid', title: 'Bid' },
    ],
  },
  {
    title: 'The decision',
    views: [
      { id: 'risk', title: 'Risk' },
      { id: 'compare', title: 'Compare' },
      { id: 'review', title: 'Review' },
      { id: 'decision', title: 'Decision' },
      { id: 'documents', title: 'Documents' },
    ],
  },
];

export const VIEWS = VIEW_GROUPS.flatMap(group => group.views);
