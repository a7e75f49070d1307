/** A page in the background is let run a timer about once a minute; twice that and a little is silence. */
const SILENCE = 150_000;
/** A page that is loaded again says goodbye first; it is back within this. */
const GOODBYE = 6_000;

export interface Presence {
  readonly note: (presence: 'here' | 'gone') => void;
  readonly stop: () => void;
}

/** Ends the host when the page has said goodbye or has been silent for long. It never ends before the first sign. */
export function watchPresence(onEnd: () => void, silence = SILENCE, goodbye = GOODBYE): Presence {
  let timer: NodeJS.Timeout | undefined;
  const stop = () => clearTimeout(timer);
  return {
    note: presence => {
      stop();
      timer = setTimeout(onEnd, presence === 'here' ? silence : goodbye);
    },
    stop,
  };
}
