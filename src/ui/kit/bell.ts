let context: AudioContext | null = null;

/** Browsers let a page sound only after it was touched; the first touch anywhere opens the way. */
export function readyBell(): void {
  const open = () => {
    context ??= new AudioContext();
    if (context.state === 'suspended') context.resume().catch(() => undefined);
  };
  addEventListener('pointerdown', open, { passive: true });
  addEventListener('keydown', open);
}

/** Three rising tones; silent where the browser allows none, so there is always something to see as well. */
export function ringBell(): void {
  if (context === null || context.state !== 'running') return;
  const start = context.currentTime;
  [523, 659, 784].forEach((frequency, index) => {
    if (context === null) return;
    const tone = context.createOscillator();
    const loudness = context.createGain();
    const from = start + index * 0.28;
    tone.frequency.value = frequency;
    loudness.gain.setValueAtTime(0, from);
    loudness.gain.linearRampToValueAtTime(0.4, from + 0.03);
    loudness.gain.exponentialRampToValueAtTime(0.001, from + 0.26);
    tone.connect(loudness).connect(context.destination);
    tone.start(from);
    tone.stop(from + 0.27);
  });
}
