import type { MarkShape } from '../../core/condition/index.ts';
import { Button } from '../kit/index.ts';
import type { Surface } from './surface.ts';
import { middleOf, type View, wholeView, zoomed } from './view.ts';

export type Tool = 'look' | 'corners' | MarkShape;

const shapes = [
  { tool: 'point', words: 'Point' },
  { tool: 'line', words: 'Line' },
  { tool: 'polygon', words: 'Outline' },
] as const;

/** What to draw, and how near to look. */
export function PadTools(props: {
  readonly tool: Tool;
  readonly onTool: (tool: Tool) => void;
  readonly canTapCorners: boolean;
  readonly hasCorners: boolean;
  readonly canUndo: boolean;
  readonly onUndo: () => void;
  readonly surface: Surface;
  readonly view: View;
  readonly onView: (view: View) => void;
}) {
  const { surface, view } = props;
  const zoom = (by: number) => props.onView(zoomed(view, by, middleOf(view, surface), surface));
  return (
    <div className="padTools" role="toolbar" aria-label="Drawing">
      {props.canTapCorners ? (
        <Button tone="ghost" isPressed={props.tool === 'corners'} onPress={() => props.onTool('corners')}>
          {props.hasCorners ? 'Corners again' : 'Tap corners'}
        </Button>
      ) : null}
      {shapes.map(({ tool, words }) => (
        <Button key={tool} tone="ghost" isPressed={props.tool === tool} onPress={() => props.onTool(tool)}>
          {words}
        </Button>
      ))}
      <Button tone="ghost" isDisabled={!props.canUndo} onPress={props.onUndo}>
        Undo
      </Button>
      <span className="zoom">
        <Button tone="ghost" label="Smaller" onPress={() => zoom(1 / 1.6)}>
          −
        </Button>
        <Button tone="ghost" label="Larger" onPress={() => zoom(1.6)}>
          +
        </Button>
        <Button tone="ghost" label="Whole picture" onPress={() => props.onView(wholeView(surface))}>
          ⤢
        </Button>
      </span>
    </div>
  );
}
