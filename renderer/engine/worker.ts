import type { Asked, Said } from './protocol';
import { answerOf } from './answers';

/** The engine's own thread: one question at a time, faults told, never lost. */
self.onmessage = (event: MessageEvent<Asked>) => {
  const { number, name, ask } = event.data;
  const say = (said: Said) => self.postMessage(said);
  void (async () => {
    try {
      const answer = await answerOf(name, ask, (done, of, words) =>
        say({ number, kind: 'progress', done, of, words }),
      );
      say({ number, kind: 'answer', answer });
    } catch (cause) {
      say({ number, kind: 'fault', message: cause instanceof Error ? cause.message : String(cause) });
    }
  })();
};
