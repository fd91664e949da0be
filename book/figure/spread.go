package figure

// spread moves intervals apart along a line, as little as possible: the sum of
// the squared moves is least. The intervals have their middles at want, in
// rising order, and the given sizes; they end up in the same order, touching
// at most, between low and high. It returns the new middles, or false if there
// is no room for all of them.
//
// With the room that the ones before it need taken off every middle, the
// demand is that the middles do not fall, which pooling neighbours that do
// and giving them their mean fulfils at the least cost.
func spread(want, sizes []int, low, high int) ([]int, bool) {
	before := make([]int, len(want)) // room for those before, half of itself included
	total := 0
	for i, size := range sizes {
		before[i] = total + size/2
		total += size
	}
	if total > high-low {
		return nil, false
	}
	type pool struct{ sum, n int }
	var pools []pool
	for i, w := range want {
		pools = append(pools, pool{w - before[i], 1})
		for k := len(pools) - 1; k > 0 && pools[k-1].sum*pools[k].n >= pools[k].sum*pools[k-1].n; k-- {
			pools[k-1].sum += pools[k].sum
			pools[k-1].n += pools[k].n
			pools = pools[:k]
		}
	}
	middles := make([]int, 0, len(want))
	for _, p := range pools {
		base := min(max(p.sum/p.n, low), high-total)
		for range p.n {
			middles = append(middles, base+before[len(middles)])
		}
	}
	return middles, true
}
