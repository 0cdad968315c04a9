import { Link } from 'wouter';

const instruments = [
  {
    to: '/bench/plan',
    title: 'Plan a wash',
    about: 'Enter what is known of a rug; see what it can bear, why, and what would loosen it.',
  },
  {
    to: '/bench/mix',
    title: 'Mix and rinse',
    about: 'What to weigh for a bath of a pH, with its range, and which way of rinsing takes least water.',
  },
  {
    to: '/bench/dry',
    title: 'Drying',
    about: 'When a rug will be dry in a room, how sure that is, and what one machine more would change.',
  },
  {
    to: '/bench/weave',
    title: 'Count a weave',
    about: 'Knots from a photograph of the back, with the count drawn over it for your eye to check.',
  },
  {
    to: '/bench/card',
    title: 'Weave card',
    about: 'The printed sheet that gives photographs their scale and colour: print it, measure its bar once.',
  },
  {
    to: '/bench/blot',
    title: 'Grade a blot',
    about:
      'How much dye a white cloth took up, from a photograph under the weave card, and how sure that is.',
  },
  {
    to: '/bench/compare',
    title: 'Compare before and after',
    about: 'Two pictures of one rug: what grew lighter or cleaner, and whether a dye moved.',
  },
  {
    to: '/bench/convert',
    title: 'Convert a knot density',
    about: 'Between raj, per square inch, per dm², lines and the other ways of the trade.',
  },
] as const;

/** The instruments that work without a rug in the house. */
export function BenchPage() {
  return (
    <div className="page narrow">
      <h1>Bench</h1>
      <p className="lead">Instruments to use with or without a rug. Nothing here is recorded.</p>
      <ul className="rows">
        {instruments.map(({ to, title, about }) => (
          <li key={to}>
            <Link className="row plain later" href={to}>
              <div>
                <div className="do">{title}</div>
                <div className="sub">{about}</div>
              </div>
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}
