/**
 * Thermal resistance from a uniformly heated rectangle on a very large, thick body to far away, by its centre [K/W].
 *
 * R = [x·asinh(y/x) + y·asinh(x/y)]/(2·π·k·x·y), x and y half of each side
 *
 * width, depth  sides of the rectangle [m]
 * k             thermal conductivity of the body [W/(m·K)]
 * Valid where the body is large and thick against the source.
 * Source: W. M. Rohsenow, J. P. Hartnett, Y. I. Cho, Handbook of Heat Transfer, 3rd ed., 1998, chapter 3.
 */
export function halfSpaceCentreResistance(width: number, depth: number, conductivity: number): number {
  const [x, y] = [width / 2, depth / 2];
  return (x * Math.asinh(y / x) + y * Math.asinh(x / y)) / (2 * Math.PI * conductivity * x * y);
}

/**
 * The same by the source's mean temperature [K/W].
 *
 * R = {2·[w²·d·asinh(d/w) + w·d²·asinh(w/d)] + ⅔·[w³ + d³ − (w² + d²)^1.5]}/(2·π·k·w²·d²)
 *
 * w, d  sides of the rectangle [m]
 * Range and source as for the centre.
 */
export function halfSpaceMeanResistance(width: number, depth: number, conductivity: number): number {
  const along = width * width * depth * Math.asinh(depth / width);
  const across = width * depth * depth * Math.asinh(width / depth);
  const corners = width ** 3 + depth ** 3 - Math.hypot(width, depth) ** 3;
  return (2 * (along + across) + (2 / 3) * corners) / (2 * Math.PI * conductivity * (width * depth) ** 2);
}

/**
 * Thermal resistance from a round source at one temperature on a very large, thick body to far away [K/W].
 *
 * R = 1/(4·k·a)
 *
 * a  radius of the source [m]
 * k  thermal conductivity of the body [W/(m·K)]
 * Valid where the body is large and thick against the source.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 4.1, case 10.
 */
export function isothermalDiscResistance(radius: number, conductivity: number): number {
  return 1 / (4 * conductivity * radius);
}
