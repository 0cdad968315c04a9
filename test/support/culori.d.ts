/** The little of the second library of colour that the tests ask; it ships no types of its own. */
declare module 'culori' {
  export interface Lab65 {
    readonly mode: 'lab65';
    readonly l: number;
    readonly a: number;
    readonly b: number;
  }
  export interface Rgb {
    readonly mode: 'rgb';
    readonly r: number;
    readonly g: number;
    readonly b: number;
  }
  export function converter(mode: 'lab65'): (colour: Rgb) => Lab65;
  export function differenceCiede2000(): (one: Lab65, other: Lab65) => number;
}
