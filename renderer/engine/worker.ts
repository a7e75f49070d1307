import { answerOf } from './answers';
import type { Asked, Said } from './protocol';

/** The engine's own thread: one question at a time, faults told, never lost. */
self.onmessage = (event: MessageEvent<Asked>) => {
  const { number, name, ask } = event.data;
  const say = (said: Said) => self.postMessage(said);
  try {
    say({ number, kind: 'answer', answer: answerOf(name, ask as never) });
  } catch (cause) {
    say({ number, kind: 'fault', message: cause instanceof Error ? cause.message : String(cause) });
  }
};
