package main

import (
	"example.com/drawbar/book/ampacity"
	"example.com/drawbar/book/flatroof"
	"example.com/drawbar/book/harness"
	"example.com/drawbar/book/ledger"
	"example.com/drawbar/book/protection"
	"example.com/drawbar/book/sizing"
	"example.com/drawbar/book/usable"
	"example.com/drawbar/book/voltagedrop"
	"example.com/drawbar/book/weave"
)

// chapters returns the book in reading order.
func chapters() []weave.Chapter {
	return []weave.Chapter{
		ledger.Chapter(),
		usable.Chapter(),
		voltagedrop.Chapter(),
		ampacity.Chapter(),
		protection.Chapter(),
		harness.Chapter(),
		flatroof.Chapter(),
		sizing.Chapter(),
	}
}
