import { parentPort, workerData } from 'node:worker_threads';
import { evaluate, prepareRisk } from '../../core/evaluation';
import { trialRunner, type ChunkJob, type ChunkResult } from '../../core/risk';
import { loadProject } from './load';
import type { RiskWorkerData, RiskWorkerMessage } from './risk-pool';

/** One thread of a simulation: it makes the run ready for itself and then answers jobs. */
function begin(data: RiskWorkerData): void {
  const { project } = loadProject(data.file);
  if (project === undefined || parentPort === null) return;
  const port = parentPort;
  const scenario = data.scenario === undefined ? {} : { scenario: data.scenario };
  const evaluation = evaluate(project, { today: data.today, seed: 1, upright: false, ...scenario });
  const { prepared } = prepareRisk(evaluation);
  if (prepared === undefined) return;
  const runner = trialRunner(prepared.run, data.plan);
  const send = (message: RiskWorkerMessage, handedOver: readonly ArrayBuffer[]) => {
    port.postMessage(message, handedOver);
  };
  port.on('message', ({ job, chunk }: { job: number; chunk: ChunkJob }) => {
    const result = runner.run(chunk);
    send({ job, result }, arraysOf(result));
  });
  send({ ready: true }, []);
}

/** The memory of a result, which is handed over and not copied. */
function arraysOf(result: ChunkResult): ArrayBuffer[] {
  return Object.values(result).flatMap((part: unknown) =>
    ArrayBuffer.isView(part) && part.buffer instanceof ArrayBuffer ? [part.buffer] : [],
  );
}

begin(workerData as RiskWorkerData);
