/** What the tests use of magvar 2.2.0, which has no types: degrees, kilometres, decimal year; east positive. */
declare module "magvar" {
  export function magvar(
    latitude: number,
    longitude: number,
    altitude?: number,
    when?: number | Date,
  ): number;
}
