package plan

// DemandOf is demandOf, for the test that it drops no field.
var DemandOf = demandOf

// Hours is how times are printed.
var Hours = hours

// Quantity is how numbers are printed.
var Quantity = quantity

// A Shown is a text of the plan, with the parts that have the sheets of its
// numbers and the heading of its column, if it has one.
type Shown struct {
	Parts      []string
	Head, Text string
}

// ShownBy returns every text of the plan as an owner reads it, but citations.
func ShownBy(p Plan) (all []Shown) {
	for _, s := range p.document().sections {
		for _, t := range append([]string{s.title}, s.text...) {
			all = append(all, Shown{s.parts, "", t})
		}
		for _, r := range s.rows {
			for i, cell := range r.cells {
				head := ""
				if len(s.head) > 0 {
					head = s.head[i]
				}
				all = append(all, Shown{r.parts, head, cell})
			}
		}
		for _, i := range s.items {
			for _, t := range append([]string{i.text}, i.more...) {
				all = append(all, Shown{i.parts, "", t})
			}
		}
	}
	return all
}

// For the tests that walk the inputs of the calculators.
var (
	FieldPath = fieldPath
	PathOf    = pathOf
	Described = described
	Nearest   = nearest
)
