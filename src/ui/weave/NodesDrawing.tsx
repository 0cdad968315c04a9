/** Four warps from their ends: level, or every second one pressed behind its neighbour. */
function Warps({ level }: { readonly level: boolean }) {
  const at = [26, 62, 98, 134];
  const y = (index: number) => (level || index % 2 === 0 ? 34 : 62);
  const x = (index: number) => (level || index % 2 === 0 ? (at[index] ?? 0) : (at[index - 1] ?? 0) + 10);
  return (
    <>
      {at.map((place, index) => (
        <circle key={place} className="warp" cx={x(index)} cy={y(index)} r={11} />
      ))}
      {[0, 2].map((first) => (
        <path
          key={first}
          className={first === 0 ? 'knot' : 'knot second'}
          d={
            level
              ? `M${x(first) - 15} 40a15 15 0 0 1 30 0M${x(first + 1) - 15} 40a15 15 0 0 1 30 0`
              : `M${x(first) - 15} 40a15 15 0 0 1 30 0`
          }
        />
      ))}
    </>
  );
}

function Nodes({ level }: { readonly level: boolean }) {
  const nodes = level ? [26, 62, 98, 134] : [26, 98];
  return nodes.map((x) => (
    <rect
      key={x}
      className={x < 80 ? 'node' : 'node second'}
      x={x - (level ? 15 : 28)}
      y={96}
      width={level ? 30 : 56}
      height={22}
      rx={10}
      transform={level ? undefined : 'translate(18 0)'}
    />
  ));
}

const words = {
  level: {
    title: 'Level warps: two nodes',
    about: 'Both loops of a knot lie side by side on the back: two bumps of one colour.',
  },
  depressed: {
    title: 'Depressed warps: one node',
    about: 'Every second warp is pressed behind its neighbour and hides a loop: one broad bump.',
  },
} as const;

/** Why a knot shows two nodes on the back of one rug and one on another's. */
export function NodesDrawing() {
  return (
    <div className="nodesDrawing">
      {(['level', 'depressed'] as const).map((kind) => (
        <figure key={kind}>
          <svg
            viewBox="0 0 160 124"
            role="img"
            aria-label={`${words[kind].title}. Above, the warps from their ends with two knots; below, what the back shows.`}
          >
            <Warps level={kind === 'level'} />
            <path className="ground" d="M4 84h152" />
            <Nodes level={kind === 'level'} />
          </svg>
          <figcaption>
            <b>{words[kind].title}</b>
            <span className="why">{words[kind].about}</span>
          </figcaption>
        </figure>
      ))}
      <p className="why">
        Look at a place where one knot stands alone in its colour, or bend the rug along a warp: depressed
        warps make a ribbed, stiff back.
      </p>
    </div>
  );
}
