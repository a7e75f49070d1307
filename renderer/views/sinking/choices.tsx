import { DataTable } from '../../parts/grid/data-table';
import { StudyProgress } from '../../parts/study-progress';
import { useStudy } from '../../state/studies';

/** What would widen the margin, priced by running the estimate again with each choice: worked out when the view opens. */
export function Choices() {
  const { answer, working, fault } = useStudy('choices');
  return (
    <section aria-label="What would widen the margin" className="choices">
      {working === undefined ? null : (
        <>
          <p className="quiet">Pricing what would widen the margin.</p>
          <StudyProgress name="choices" working={working} />
        </>
      )}
      {fault === undefined ? null : (
        <p className="caution" role="alert">
          The choices could not be priced. {fault} Open the view again.
        </p>
      )}
      {answer === undefined || answer.table.rows.length === 0 ? null : (
        <div className="scroll-x">
          <DataTable table={answer.table} />
        </div>
      )}
      {answer === undefined || answer.message === '' ? null : <p className="table-note">{answer.message}</p>}
    </section>
  );
}
