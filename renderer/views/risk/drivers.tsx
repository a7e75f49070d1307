import type { FoundRisk } from '../../../core/views';
import { DataTable } from '../../parts/grid/data-table';

/** What drives cost and finish, ranked: share of the variance as a bar, the swing as a span from low to high end. */
export function Drivers({ found }: { found: FoundRisk }) {
  return (
    <div className="risk-drivers">
      <div className="scroll-x">
        <DataTable table={found.drivers} after={row => <Bar bar={found.driverBars[row.id]} />} />
      </div>
      <p className="table-note">
        Filled bar: share of the variance. Open span below it: mean cost from the low end to the high end.
      </p>
      {found.drivesFinish.rows.length === 0 && found.drivesFinish.note === undefined ? null : (
        <DataTable table={found.drivesFinish} />
      )}
    </div>
  );
}

function Bar({ bar }: { bar: FoundRisk['driverBars'][string] | undefined }) {
  if (bar === undefined) return null;
  return (
    <div className="driver-bars">
      <div className="driver-share" style={{ inlineSize: `${bar.part * 100}%` }} />
      <div
        className="driver-swing"
        style={{ marginInlineStart: `${bar.from * 100}%`, inlineSize: `${(bar.to - bar.from) * 100}%` }}
      />
    </div>
  );
}
