import { EigenvalueDecomposition, Matrix } from "ml-matrix";
import { describe, it } from "vitest";
import { ellipse95, principalAxes, SEMI_AXIS_95, varianceAlong } from "../../src/wind/ellipse.ts";
import { seeded } from "../support/flown.ts";
import { near } from "../support/near.ts";

describe("ml-matrix 6.15, eigenvalues of a covariance", () => {
  const { normal } = seeded(9);
  const cases = Array.from({ length: 20 }, () => {
    const [a, b, c, d] = [normal(), normal(), normal(), normal()];
    return { east: a! * a! + b! * b!, north: c! * c! + d! * d!, both: a! * c! + b! * d! };
  });
  it.each(cases)("agrees on the axes ($east, $north, $both)", ({ east, north, both }) => {
    const axes = principalAxes(east, north, both);
    const { realEigenvalues } = new EigenvalueDecomposition(
      new Matrix([
        [east, both],
        [both, north],
      ]),
    );
    const [minor, major] = [...realEigenvalues].sort((x, y) => x - y);
    near(axes.major ** 2, major!, 1e-9);
    near(axes.minor ** 2, minor!, 1e-9);
    const angle = (axes.direction * Math.PI) / 180;
    near(varianceAlong(east, north, both, Math.sin(angle), Math.cos(angle)), major!, 1e-9);
  });
});

it("is 2.4477 standard deviations long (95 % point of chi-square with 2 degrees of freedom, 5.991, any table)", () => {
  near(SEMI_AXIS_95 ** 2, 5.991, 5e-4);
  const e = ellipse95(4, 1, 0);
  near(e.major, 2 * 2.4477, 1e-3, "kt");
  near(e.majorAxis, 90, 1e-9, "deg");
});
