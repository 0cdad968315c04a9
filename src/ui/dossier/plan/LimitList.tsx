import { type Axis, type PlanLimit, ruleIds, type WashPlan } from '../../../core/wash/index.ts';
import { Button } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { counted } from '../figures.ts';
import {
  allTogether,
  axisNames,
  axisOrder,
  isLimited,
  looserWords,
  sourceWords,
  valueWords,
} from '../limitWords.ts';

/** Reasons that say the same in the same words stand once. */
const distinct = (limits: readonly PlanLimit[]): readonly PlanLimit[] =>
  limits.filter(
    (limit, index) =>
      limits.findIndex(
        (other) =>
          other.because === limit.because && other.rule === limit.rule && other.about === limit.about,
      ) === index,
  );

function Reason({ limit }: { readonly limit: PlanLimit }) {
  const { isOwner, open, ask } = useDossier();
  const rule = ruleIds.find((id) => id === limit.rule);
  return (
    <li className="why reason">
      {Array.isArray(limit.value) && <b>{valueWords(limit.axis, limit.value)}: </b>}
      {limit.because}
      {limit.about === '' ? ' ' : ` — ${limit.about} `}
      <span className="rule">
        ({limit.rule}; {sourceWords(limit.source)})
      </span>
      {limit.assumed && ' · not known, so the most sensitive case is assumed'}
      {isOwner && open && limit.overridable && rule !== undefined && (
        <Button tone="ghost" label={`Override ${rule}`} onPress={() => ask({ kind: 'override', rule })}>
          Override
        </Button>
      )}
    </li>
  );
}

function AxisRow({ axis, plan }: { readonly axis: Axis; readonly plan: WashPlan }) {
  const { settings } = useDossier();
  const binding = distinct(plan.limits.filter((limit) => limit.axis === axis && limit.binding));
  const loosened = plan.loosens
    .filter(({ fact }) => fact !== allTogether)
    .flatMap((loosening) =>
      loosening.allows
        .filter((allowed) => allowed.axis === axis && looserWords(axis, allowed.from, allowed.to) !== '')
        .map((allowed) => ({ loosening, allowed })),
    );
  const [first, ...others] = binding;
  return (
    <li className="lim">
      <b>{axisNames[axis]}</b>
      <div>
        <div className="lim-value">{valueWords(axis, plan.bounds[axis], settings.units)}</div>
        <ul className="plain-list">
          {first === undefined ? (
            <li className="why">follows from the other limits</li>
          ) : (
            <Reason limit={first} />
          )}
          {loosened.slice(0, 2).map(({ loosening, allowed }) => (
            <li key={loosening.find} className="loosens">
              ↑ {looserWords(axis, allowed.from, allowed.to)} if {loosening.fact}: {loosening.favourable}
            </li>
          ))}
        </ul>
        {others.length > 0 && (
          <details>
            <summary>{counted(others.length, 'more reason')}</summary>
            <ul className="plain-list">
              {others.map((limit) => (
                <Reason key={`${limit.rule}${limit.about}${limit.because}`} limit={limit} />
              ))}
            </ul>
          </details>
        )}
      </div>
    </li>
  );
}

/** Axis by axis, each with its reason in soft ink and where it comes from. */
export function LimitList({ plan }: { readonly plan: WashPlan }) {
  const axes = axisOrder.filter(
    (axis) => axis !== 'consents' && axis !== 'signOffs' && isLimited(axis, plan.bounds),
  );
  const isReasoned = (axis: Axis) => plan.limits.some((limit) => limit.axis === axis && limit.binding);
  const rows = (shown: readonly Axis[]) => (
    <ul className="limits">
      {shown.map((axis) => (
        <AxisRow key={axis} axis={axis} plan={plan} />
      ))}
    </ul>
  );
  const others = axes.filter((axis) => !isReasoned(axis));
  return (
    <>
      {rows(axes.filter(isReasoned))}
      {others.length > 0 && (
        <details>
          <summary>{others.length} more that follow from these</summary>
          {rows(others)}
        </details>
      )}
    </>
  );
}
