// Words that a field takes, where it does not take any other.

const words = {
  section: ["naca", "biconvex", "double_wedge", "elliptic", "flat"],
  tip: ["capped", "open"],
  trailing_edge: ["closed", "open"],
  part: ["whole", "half"],
  head: ["flat", "hemisphere", "ellipsoidal", "torispherical"],
  form: ["sine", "arc", "trapezoid"],
  feed: ["pressure", "suction"],
  film_rule: ["mean", "min_80_20", "min_90_10"],
  labour: ["volunteer", "paid", "contract"],
  funding: ["cash", "in_kind"],
  substrate: ["aluminium", "clad_aluminium", "magnesium", "steel", "stainless_steel", "titanium", "cast_iron", "composite",
    "fibreglass", "fabric", "wood", "clear_plastic", "zinc"],
  sides: [1, 2],
  ends: [0, 1, 2],
};

const byKind = {
  "body.nose": ["open", "point", "flat"],
  "body.tail": ["open", "point", "flat"],
  "nose.profile": ["tangent_ogive", "secant_ogive", "haack", "paraboloid", "power", "elliptic"],
  "bar.kind": ["i", "channel", "angle", "round_tube", "rect_tube", "round", "flat"],
};

/** choices lists the words of a field of a kind of shape, or undefined. */
export function choices(name, kind = "") {
  return byKind[`${kind}.${name}`] ?? words[name];
}
