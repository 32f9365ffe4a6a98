// Targets that only keep parsed headers must have a source.
