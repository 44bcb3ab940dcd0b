/**
 * UTM easting and northing of a northern point by the series of Krueger (1912) in the third
 * flattening n, to the fourth order: an oracle that shares nothing with the code under test.
 *
 * Error below 1 µm within a zone. WGS 84: a = 6378137 m, 1/f = 298.257223563.
 */
export function transverseMercator(
  lonDeg: number,
  latDeg: number,
  meridianDeg: number,
): { easting: number; northing: number } {
  const a = 6378137;
  const f = 1 / 298.257223563;
  const n = f / (2 - f);
  const radius = (a / (1 + n)) * (1 + n ** 2 / 4 + n ** 4 / 64);
  const alpha = [
    n / 2 - (2 * n ** 2) / 3 + (5 * n ** 3) / 16 + (41 * n ** 4) / 180,
    (13 * n ** 2) / 48 - (3 * n ** 3) / 5 + (557 * n ** 4) / 1440,
    (61 * n ** 3) / 240 - (103 * n ** 4) / 140,
    (49561 * n ** 4) / 161280,
  ];
  const lat = (latDeg * Math.PI) / 180;
  const lon = ((lonDeg - meridianDeg) * Math.PI) / 180;
  const e = Math.sqrt(f * (2 - f));
  const t = Math.sinh(Math.atanh(Math.sin(lat)) - e * Math.atanh(e * Math.sin(lat)));
  const xi = Math.atan2(t, Math.cos(lon));
  const eta = Math.asinh(Math.sin(lon) / Math.hypot(t, Math.cos(lon)));
  let x = eta;
  let y = xi;
  alpha.forEach((coefficient, i) => {
    const k = 2 * (i + 1);
    x += coefficient * Math.cos(k * xi) * Math.sinh(k * eta);
    y += coefficient * Math.sin(k * xi) * Math.cosh(k * eta);
  });
  return { easting: 500000 + 0.9996 * radius * x, northing: 0.9996 * radius * y };
}
