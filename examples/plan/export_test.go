package plan

// DemandOf is demandOf, for the test that it drops no field.
var DemandOf = demandOf
