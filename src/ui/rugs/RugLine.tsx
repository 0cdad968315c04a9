import { Fragment, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { RugListRow } from '../call/index.ts';
import { Band, Picture, Tag } from '../kit/index.ts';

interface RugLineProps {
  readonly row: RugListRow;
  /** What stands in large letters; the rug's own name unless told. */
  readonly title?: string | undefined;
  readonly detail?: string | undefined;
  readonly tone?: 'now' | 'soon' | 'later' | 'wait' | '';
  readonly aside?: ReactNode;
}

/** One rug in a list: its picture, tag, what matters now, and how far its visit is woven. */
export function RugLine({ row, title, detail, tone = '', aside }: RugLineProps) {
  const { body } = row;
  const about = [title === undefined ? null : body.title, detail, row.clientName, row.place].filter(
    (words) => words !== null && words !== undefined && words !== '',
  );
  return (
    <div className={`row ${tone}`}>
      {body.photo === null ? <NoPicture /> : <Picture photo={body.photo} form="thumbnail" alt="" />}
      <div>
        <Link className="do" href={`/rugs/${row.rug}`}>
          {row.tag === null ? null : <Tag tag={row.tag} />}
          {title ?? body.title}
        </Link>
        <div className="sub">
          {about.map((words, index) => (
            <Fragment key={words}>
              {index === 0 ? '' : ' · '}
              <bdi>{words}</bdi>
            </Fragment>
          ))}
        </div>
        <Band stages={body.stages} />
      </div>
      <div className="when">{aside}</div>
    </div>
  );
}

/** Bare warp where no photograph is yet. */
function NoPicture() {
  return (
    <svg className="nopicture" viewBox="0 0 56 70" aria-hidden="true">
      <g stroke="currentColor" strokeWidth={2}>
        {[6, 14, 22, 30, 38, 46].map((x) => (
          <line key={x} x1={x + 2} x2={x + 2} y1={2} y2={68} />
        ))}
      </g>
    </svg>
  );
}
