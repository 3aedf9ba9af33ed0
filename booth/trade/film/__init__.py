"""Film and pace: wet and dry film, the gauge, the speed of the gun, the material a part takes."""
