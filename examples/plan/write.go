package plan

import "encoding/json"

// MarshalJSON returns the description that [Read] reads as r again, every
// quantity to the last bit. What is nil and has to be there is an empty list,
// as [Make] takes it.
func (r Rig) MarshalJSON() ([]byte, error) {
	type plain Rig // without this method
	w := plain(r)
	w.Buses, w.Loads = listed(r.Buses), listed(r.Loads)
	if r.Roof != nil {
		roof := *r.Roof
		roof.Losses = listed(roof.Losses)
		w.Roof = &roof
	}
	if r.Bonds != nil {
		w.Bonds = make([]Bond, len(r.Bonds))
		for i, b := range r.Bonds {
			w.Bonds[i] = Bond{At: b.At, With: listed(b.With)}
		}
	}
	return json.Marshal(w)
}

// listed returns a list, which is empty but not nil if there is nothing in it.
func listed[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}
