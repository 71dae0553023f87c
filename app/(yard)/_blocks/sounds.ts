let audio: AudioContext | undefined;

/** Two short high tones when it went well, one long low tone when it did not: heard without looking. */
export function sound(kind: 'good' | 'bad'): void {
  try {
    audio ??= new AudioContext();
    const tones = kind === 'good' ? [880, 1320] : [196];
    for (const [index, frequency] of tones.entries())
      tone(audio, { frequency, at: index * 0.11, lasts: kind === 'good' ? 0.09 : 0.4 });
  } catch {
    // A browser without sound still shows the words.
  }
}

interface Tone {
  readonly frequency: number;
  readonly at: number;
  readonly lasts: number;
}

function tone(context: AudioContext | undefined, { frequency, at, lasts }: Tone): void {
  if (context === undefined) return;
  const source = context.createOscillator();
  const level = context.createGain();
  level.gain.value = 0.08;
  source.frequency.value = frequency;
  source.connect(level).connect(context.destination);
  source.start(context.currentTime + at);
  source.stop(context.currentTime + at + lasts);
}
