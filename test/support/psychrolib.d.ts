declare module 'psychrolib' {
  interface Psychrometrics {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(celsius: number): number;
    GetHumRatioFromRelHum(celsius: number, rh: number, pascals: number): number;
    GetTDewPointFromRelHum(celsius: number, rh: number): number;
    GetTWetBulbFromRelHum(celsius: number, rh: number, pascals: number): number;
    GetRelHumFromTWetBulb(celsius: number, wetBulb: number, pascals: number): number;
  }
  const psychrolib: Psychrometrics;
  export default psychrolib;
}
