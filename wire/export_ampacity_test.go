package wire

import "example.com/drawbar/units"

// AirAt returns the properties of air at t.
func AirAt(t units.Temperature) AirProperties { return airAt(t) }

// Strictest returns what a wire in a wall may carry by the strictest table.
func Strictest(s Size) units.Current { return strictest(s) }

// Kindest returns the greatest ampacity of the tables, to 105 °C.
func Kindest(s Size) units.Current { return kindest(s) }
