"""Repeatability: whether what is measured job after job stays within what it usually scatters by."""
