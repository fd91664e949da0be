package units

// Legs is a quantity on the two legs, A and B, of a 120/240 V service or
// panel. Each leg is a conductor with a rating of its own: what matters is
// the larger of the two, which their total does not show.
type Legs[Q Quantity] struct {
	A Q // on leg A
	B Q // on leg B
}

// Total returns the sum of both legs. A current into one leg of a 240 V load
// comes out of the other, so a total is for powers and energies.
func (l Legs[Q]) Total() Q { return l.A + l.B }

// Larger returns the greater of both legs, NaN if one is NaN.
func (l Legs[Q]) Larger() Q { return max(l.A, l.B) }

// Unbalance returns the absolute difference of the legs, exactly zero where
// [Minus] says so. Of currents in phase it is the neutral's.
func (l Legs[Q]) Unbalance() Q {
	d := Minus(l.A, l.B)
	return max(d, -d)
}

// Plus returns the sums leg by leg.
func (l Legs[Q]) Plus(other Legs[Q]) Legs[Q] {
	return Legs[Q]{A: l.A + other.A, B: l.B + other.B}
}

// Scale returns both legs times ratio, as [Scale] does.
func (l Legs[Q]) Scale(ratio Ratio) Legs[Q] {
	return Legs[Q]{A: Scale(l.A, ratio), B: Scale(l.B, ratio)}
}
