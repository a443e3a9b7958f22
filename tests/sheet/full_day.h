#pragma once

#include <map>
#include <string>

namespace furnish::test {

/// A salon's files with one day, the demo's, of so many bookings spread over so many groomers, none
/// twice at once: five kinds of coat and product, two of three pets with an alert, some work that
/// runs over what is booked, some findings, some vaccinations expired.
std::map<std::string, std::string> full_day(int bookings, int groomers);
}  // namespace furnish::test
