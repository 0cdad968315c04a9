import { Choice, Section } from '../kit/index.ts';
import { NodesDrawing } from './NodesDrawing.tsx';
import type { SaidNodes } from './rugCount.ts';

/** How many nodes a knot shows, with what to look for. */
export function NodesSection(props: {
  readonly nodes: SaidNodes;
  readonly onNodes: (nodes: SaidNodes) => void;
}) {
  return (
    <Section title="Nodes per knot">
      <NodesDrawing />
      <Choice<SaidNodes>
        label="On this rug a knot shows"
        columns={3}
        options={[
          { value: '2', words: 'Two nodes', hint: 'level warps' },
          { value: '1', words: 'One node', hint: 'fully depressed warps' },
          { value: 'unknown', words: 'Not known', hint: 'decided only where colours leave no doubt' },
        ]}
        value={props.nodes}
        onChange={props.onNodes}
      />
    </Section>
  );
}
