/** Two sounds that cannot be mistaken for each other: one short and high for yes, two low ones for no. Silent where the browser has none. */
export function beep(tone: 'good' | 'bad'): void {
  if (typeof AudioContext === 'undefined') return;
  try {
    player ??= new AudioContext();
    const notes =
      tone === 'good'
        ? [{ at: 0, hertz: 1320 }]
        : [
            { at: 0, hertz: 220 },
            { at: 0.22, hertz: 196 },
          ];
    for (const { at, hertz } of notes) play({ player, at, hertz });
  } catch {
    // A sound that cannot be played is no reason to stop: the words and the colour say the same.
  }
}

let player: AudioContext | undefined;

interface Note {
  readonly player: AudioContext;
  readonly at: number;
  readonly hertz: number;
}

const SECONDS = 0.16;
const LOUDNESS = 0.25;

function play({ player: context, at, hertz }: Note): void {
  const voice = context.createOscillator();
  const volume = context.createGain();
  voice.frequency.value = hertz;
  volume.gain.value = LOUDNESS;
  voice.connect(volume).connect(context.destination);
  voice.start(context.currentTime + at);
  voice.stop(context.currentTime + at + SECONDS);
}
