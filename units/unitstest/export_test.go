package unitstest

// CheckSteps is for steps that no sheet would record.
var CheckSteps = checkSteps
