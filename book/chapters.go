package main

import (
	"example.com/drawbar/book/protection"
	"example.com/drawbar/book/voltagedrop"
	"example.com/drawbar/book/weave"
)

// chapters returns the book in reading order.
func chapters() []weave.Chapter {
	return []weave.Chapter{
		voltagedrop.Chapter(),
		protection.Chapter(),
	}
}
