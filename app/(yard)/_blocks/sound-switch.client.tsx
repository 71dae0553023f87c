'use client';

interface SoundSwitchProps {
  readonly isMuted: boolean;
  readonly onToggle: () => void;
}

export function SoundSwitch({ isMuted, onToggle }: SoundSwitchProps) {
  return (
    <button type="button" className="quiet" aria-pressed={!isMuted} onClick={onToggle}>
      {isMuted ? 'Sound off' : 'Sound on'}
    </button>
  );
}
