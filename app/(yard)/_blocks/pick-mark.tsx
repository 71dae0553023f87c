interface MarkProps {
  readonly isPicked: boolean;
  readonly isWaiting: boolean;
}

export function PickMark({ isPicked, isWaiting }: MarkProps) {
  if (isWaiting) return <span className="mark warning">waiting</span>;
  return isPicked ? <span className="mark good">✓ picked</span> : <span className="mark">to pick</span>;
}
