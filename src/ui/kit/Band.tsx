/** One stage of a visit, as the woven band shows it. */
export interface BandStage {
  readonly stage: string;
  readonly state: 'done' | 'now' | 'to come';
}

/** Each stage keeps its dye, also in a visit that leaves some stages out. */
const hues: Readonly<Record<string, string>> = {
  received: 'madder',
  identified: 'walnut',
  tested: 'weld',
  agreed: 'indigo',
  washed: 'indigo',
  dried: 'indigo',
  finished: 'moss',
  returned: 'madder',
};
const unit = 30;

/** The progress of a visit: one row of four knots per stage, filled when done, outlined now, bare warp to come. */
export function Band({ stages }: { readonly stages: readonly BandStage[] }) {
  if (stages.length === 0) return null;
  const done = stages.filter(({ state }) => state === 'done').map(({ stage }) => stage);
  const now = stages.filter(({ state }) => state === 'now').map(({ stage }) => stage);
  const words = [
    done.length > 0 ? `${done.join(', ')} done` : 'nothing done yet',
    ...(now.length > 0 ? [`now ${now.join(', ')}`] : []),
  ].join('; ');
  return (
    <svg
      className="band"
      viewBox={`0 0 ${unit * stages.length} 18`}
      width={unit * stages.length}
      role="img"
      aria-label={words}
    >
      <title>{words}</title>
      {stages.map(({ stage, state }, index) => (
        <g key={stage} style={{ color: `var(--${hues[stage] ?? 'indigo'})` }}>
          {[0, 1, 2, 3].map((knot) => (
            <Knot key={knot} x={index * unit + 3 + knot * 6} state={state} isPale={knot % 2 === 0} />
          ))}
        </g>
      ))}
    </svg>
  );
}

function Knot(props: { readonly x: number; readonly state: BandStage['state']; readonly isPale: boolean }) {
  const { x, state } = props;
  switch (state) {
    case 'done':
      return (
        <rect
          x={x}
          y={2}
          width={4.5}
          height={14}
          rx={2.2}
          fill="currentColor"
          opacity={props.isPale ? 0.86 : 1}
        />
      );
    case 'now':
      return (
        <rect
          x={x + 0.8}
          y={2.8}
          width={3.2}
          height={12.4}
          rx={1.6}
          fill="none"
          stroke="currentColor"
          strokeWidth={1.7}
        />
      );
    case 'to come':
      return <line x1={x + 2.2} x2={x + 2.2} y1={2} y2={16} stroke="var(--line)" strokeWidth={1.6} />;
  }
}
