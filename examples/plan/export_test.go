package plan

// DemandOf is demandOf, for the test that it drops no field.
var DemandOf = demandOf

// For the tests that walk the inputs of the calculators.
var (
	FieldPath = fieldPath
	PathOf    = pathOf
	Described = described
	Nearest   = nearest
)
