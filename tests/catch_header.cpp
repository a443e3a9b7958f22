// Gives the precompiled header of all tests something to belong to.
#include <catch2/catch.hpp>
